/* Log plants: another card, or one less, without a round to the server. The server does the same for
   whoever has no scripts. */

const form = document.getElementById("log-form");
const blank = document.getElementById("log-blank");
const list = document.getElementById("log-cards");

function total() {
  return form.querySelector('[name="plants-TOTAL_FORMS"]');
}

function cards() {
  return [...list.querySelectorAll("[data-card]")];
}

/* Cards keep the number they were made with in their field names; only what is read is counted anew. */
function countAnew() {
  const all = cards();
  all.forEach((card, index) => {
    card.querySelector(".card-count").textContent = `${index + 1} of ${all.length}`;
    card.querySelector(".log-card-title").textContent = `Plant ${index + 1}`;
  });
}

/* Whoever logs for somebody else logs several plants for them. */
function takeOver(from, to) {
  for (const name of ["kept_text", "kept_id"]) {
    const field = to.querySelector(`[name$="-${name}"]`);
    if (field && from) field.value = from.querySelector(`[name$="-${name}"]`).value;
  }
}

function addCard(event) {
  const place = Number(total().value);
  if (place >= Number(form.querySelector('[name="plants-MAX_NUM_FORMS"]').value)) return;
  event.preventDefault();
  const holder = document.createElement("div");
  holder.innerHTML = blank.innerHTML.replaceAll("__prefix__", String(place));
  const card = holder.firstElementChild;
  takeOver(cards().at(-1), card);
  list.append(card);
  total().value = String(place + 1);
  countAnew();
  card.dispatchEvent(new CustomEvent("card-added", { bubbles: true }));
  card.querySelector("input:not([type=hidden])").focus();
  card.scrollIntoView({ block: "start" });
}

/* A card that is gone is sent as an empty one, which is not logged. */
function dropCard(event) {
  const all = cards();
  if (all.length < 2) return;
  event.preventDefault();
  const gone = event.target.closest("[data-card]");
  const beside = all[all.indexOf(gone) + 1] ?? all[all.indexOf(gone) - 1];
  gone.remove();
  countAnew();
  beside.querySelector("input:not([type=hidden])").focus();
}

/* What is to be said of a tag, below it: the name of today, or which one is meant. The check before saving
   asks the same, so without an answer nothing is lost. */
async function answerTag(input) {
  const [, place, field] = input.name.match(/^plants-(\d+)-(label_text|think)$/);
  const what = field === "think" ? "think" : "tag";
  const region = input.closest("[data-card]").querySelector(`[data-answer="${what}"]`);
  const text = input.value.trim();
  const url = new URL(form.dataset.tagUrl, location.href);
  url.search = new URLSearchParams({ text, place, what });
  let said = "";
  try {
    const answer = text ? await fetch(url, { headers: { "HX-Request": "true" } }) : null;
    if (answer?.ok && !answer.redirected) said = await answer.text();
  } catch {
    // No signal.
  }
  if (input.value.trim() === text) region.replaceChildren(...new DOMParser().parseFromString(said, "text/html").body.childNodes);
}

if (form) {
  form.addEventListener("change", (event) => {
    if (/-(label_text|think)$/.test(event.target.name)) answerTag(event.target);
  });
  form.addEventListener("click", (event) => {
    if (event.target.closest("[data-add-card]")) addCard(event);
    else if (event.target.closest("[data-drop-card]")) dropCard(event);
  });
  /* The day follows the meeting, unless somebody typed another. */
  const day = form.elements.acquired;
  let own = false;
  day.addEventListener("input", () => (own = true));
  form.elements.meeting.addEventListener("change", (event) => {
    const chosen = event.target.selectedOptions[0];
    if (!own && chosen.value) day.value = chosen.textContent.split(", ").pop();
  });
}

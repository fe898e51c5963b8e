/* Forms that are sent once, and say so when nothing came back.
   The server recognises a repeat by itself; this only spares people the doubt. */

const RELEASE_AFTER = 15000;
const SENDING = "sending";

const WORDS = {
  lost: "Nothing came back. What you typed is still here. Try again when the signal is better.",
  signedOut: "You have been signed out meanwhile. What you typed is still here: sign in again in another tab, then send it once more.",
  notYours: "This was refused: perhaps you signed in again since you opened the page. What you typed is still here. Copy it, then load the page anew.",
  gone: "There is nothing there any more. What you typed is still here.",
  ours: "Something went wrong here; it was not you. What you typed is still here. Try again in a minute.",
};

function submitButtons(form) {
  return [...form.elements].filter((control) => control.type === "submit");
}

/* aria-disabled, not disabled: a disabled button loses the focus and its own value is not sent. */
function markSending(form, sending) {
  if (sending) form.dataset[SENDING] = "yes";
  else delete form.dataset[SENDING];
  for (const button of submitButtons(form)) {
    if (sending) button.setAttribute("aria-disabled", "true");
    else button.removeAttribute("aria-disabled");
  }
}

function guardSubmit(event) {
  const form = event.target;
  if (form.method !== "post" || "sendOften" in form.dataset) return;
  if (SENDING in form.dataset) {
    event.preventDefault();
    event.stopImmediatePropagation();
    return;
  }
  // After the other listeners, so that one of them may still call the sending off.
  setTimeout(() => {
    const byScript = form.matches("[hx-post], [hx-put], [hx-patch], [hx-delete]");
    if (event.defaultPrevented && !byScript) return;
    markSending(form, true);
    setTimeout(() => markSending(form, false), RELEASE_AFTER);
  });
}

function releaseAll() {
  for (const form of document.querySelectorAll("form[data-sending]")) markSending(form, false);
}

/* Says it where a screen reader listens and an eye looks. */
export function sayTrouble(words) {
  const region = document.getElementById("send-trouble");
  if (!region) return;
  region.textContent = "";
  if (!words) return;
  const notice = document.createElement("p");
  notice.className = "notice";
  notice.textContent = words;
  region.append(notice);
  notice.scrollIntoView({ block: "nearest" });
}

function wordsForStatus(status) {
  if (status === 401) return WORDS.signedOut;
  if (status === 403) return WORDS.notYours;
  if (status === 404 || status === 410) return WORDS.gone;
  return WORDS.ours;
}

/* A whole page in place of a piece of one is the sign-in page, or an error page. */
function refuseWholePage(event) {
  const { xhr, target } = event.detail;
  if (target === document.body || !/^\s*<!doctype/i.test(xhr.responseText.slice(0, 100))) return;
  event.detail.shouldSwap = false;
  if (xhr.status < 400) sayTrouble(WORDS.signedOut);
}

function focusOnErrors(root) {
  const summary = root.querySelector?.(".error-summary");
  const focused = document.activeElement;
  if (summary && (!focused || focused === document.body)) summary.focus();
}

document.addEventListener("submit", guardSubmit, true);
addEventListener("pageshow", (event) => event.persisted && releaseAll());

document.addEventListener("htmx:beforeRequest", () => sayTrouble(""));
document.addEventListener("htmx:afterRequest", releaseAll);
document.addEventListener("htmx:sendError", () => sayTrouble(WORDS.lost));
document.addEventListener("htmx:timeout", () => sayTrouble(WORDS.lost));
document.addEventListener("htmx:responseError", (event) => sayTrouble(wordsForStatus(event.detail.xhr.status)));
document.addEventListener("htmx:beforeSwap", refuseWholePage);
document.addEventListener("htmx:afterSettle", (event) => focusOnErrors(event.detail.target));

/* The menu closes as people expect: Escape, or a tap beside it. */
document.addEventListener("keydown", (event) => {
  const open = document.querySelector(".site-more[open]");
  if (event.key !== "Escape" || !open) return;
  open.open = false;
  open.querySelector("summary").focus();
});
document.addEventListener("click", (event) => {
  const open = document.querySelector(".site-more[open]");
  if (open && !open.contains(event.target)) open.open = false;
});

focusOnErrors(document);

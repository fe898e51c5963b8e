/* Suggestions under a text field, after the combobox pattern of the ARIA Authoring Practices Guide
   (editable, list autocomplete, manual selection). What was typed is kept whether it matches or not.

   <input data-suggest-url="/…"                 asked with ?q=what was typed
          data-suggest-with="[name=from_member]" optional: other fields of the same card that are sent along
          data-suggest-into="[name=plant_id]"    optional: gets the data-id of the one chosen, else nothing
          data-suggest-at-once>                  optional: asked before anything is typed, if others are sent along
   The answer is a row of <li role="option" data-value="…" data-id="…">…</li>. */

const PAUSE = 200;
const PATIENCE = 10000;
let made = 0;

function scopeOf(input) {
  return input.closest("[data-card], fieldset[data-scope], form") ?? document;
}

function sayCount(status, count) {
  if (count === 0) status.textContent = "No suggestions. What you typed is kept.";
  else status.textContent = count === 1 ? "1 suggestion." : `${count} suggestions.`;
}

/* Only options are taken from the answer, whatever else it holds. */
function optionsFrom(html) {
  return [...new DOMParser().parseFromString(html, "text/html").querySelectorAll('[role="option"]')];
}

export class Combobox {
  constructor(input) {
    this.input = input;
    this.number = ++made;
    this.active = -1;
    this.build();
    this.listen();
  }

  build() {
    const { input } = this;
    const box = document.createElement("div");
    box.className = "combobox";
    input.before(box);
    this.list = document.createElement("ul");
    Object.assign(this.list, { className: "suggestions", id: `suggestions-${this.number}`, hidden: true });
    this.list.setAttribute("role", "listbox");
    this.list.setAttribute("aria-label", "Suggestions");
    this.status = document.createElement("div");
    this.status.className = "visually-hidden";
    this.status.setAttribute("role", "status");
    box.append(input, this.list, this.status);
    input.autocomplete = "off";
    input.setAttribute("role", "combobox");
    input.setAttribute("aria-autocomplete", "list");
    input.setAttribute("aria-controls", this.list.id);
    input.setAttribute("aria-expanded", "false");
  }

  listen() {
    const { input, list } = this;
    input.addEventListener("input", () => this.typed());
    input.addEventListener("keydown", (event) => this.key(event));
    input.addEventListener("blur", () => this.close());
    input.addEventListener("focus", () => this.offer());
    // The finger must not take the focus out of the field before the choice is made.
    list.addEventListener("pointerdown", (event) => event.preventDefault());
    list.addEventListener("click", (event) => {
      const option = event.target.closest('[role="option"]');
      if (option) this.choose(option);
    });
  }

  get options() {
    return [...this.list.children];
  }

  get into() {
    const selector = this.input.dataset.suggestInto;
    return selector ? scopeOf(this.input).querySelector(selector) : null;
  }

  typed() {
    if (this.into) this.into.value = "";
    clearTimeout(this.timer);
    this.asking?.abort();
    if (!this.input.value.trim()) return this.close();
    this.timer = setTimeout(() => this.ask(), PAUSE);
  }

  offer() {
    if (!("suggestAtOnce" in this.input.dataset) || this.input.value.trim()) return;
    // The question itself is one of the parameters.
    if ([...this.address().searchParams].length > 1) this.ask();
  }

  address() {
    const url = new URL(this.input.dataset.suggestUrl, location.href);
    url.searchParams.set("q", this.input.value.trim());
    const selector = this.input.dataset.suggestWith;
    const others = selector ? scopeOf(this.input).querySelectorAll(selector) : [];
    for (const other of others) {
      if (other.value && (other.type !== "radio" || other.checked)) url.searchParams.set(other.name, other.value);
    }
    return url;
  }

  async ask() {
    const asking = new AbortController();
    this.asking = asking;
    const patience = setTimeout(() => asking.abort(), PATIENCE);
    try {
      const answer = await fetch(this.address(), { signal: asking.signal, headers: { "HX-Request": "true" } });
      if (answer.ok && !answer.redirected) this.show(optionsFrom(await answer.text()));
      else this.close();
    } catch {
      // No signal: the field goes on as a plain field.
      if (this.asking === asking) this.close();
    } finally {
      clearTimeout(patience);
    }
  }

  show(options) {
    options.forEach((option, index) => {
      option.id = `${this.list.id}-${index}`;
      option.setAttribute("aria-selected", "false");
    });
    this.list.replaceChildren(...options);
    this.active = -1;
    this.input.removeAttribute("aria-activedescendant");
    const open = options.length > 0 && document.activeElement === this.input;
    this.list.hidden = !open;
    this.input.setAttribute("aria-expanded", String(open));
    sayCount(this.status, options.length);
  }

  close() {
    clearTimeout(this.timer);
    this.asking?.abort();
    this.asking = null;
    this.list.hidden = true;
    this.active = -1;
    this.input.setAttribute("aria-expanded", "false");
    this.input.removeAttribute("aria-activedescendant");
  }

  move(step) {
    const { options } = this;
    if (!options.length) return;
    options[this.active]?.setAttribute("aria-selected", "false");
    // One place past either end is the field itself.
    const places = options.length + 1;
    this.active = ((this.active + 1 + step + places) % places) - 1;
    const option = options[this.active];
    if (!option) return this.input.removeAttribute("aria-activedescendant");
    option.setAttribute("aria-selected", "true");
    option.scrollIntoView({ block: "nearest" });
    this.input.setAttribute("aria-activedescendant", option.id);
  }

  key(event) {
    const open = !this.list.hidden;
    if (event.key === "ArrowDown" || event.key === "ArrowUp") {
      event.preventDefault();
      if (open) this.move(event.key === "ArrowDown" ? 1 : -1);
      else if (this.input.value.trim()) this.ask();
    } else if (event.key === "Enter" && open && this.active >= 0) {
      event.preventDefault();
      this.choose(this.options[this.active]);
    } else if (event.key === "Escape" && open) {
      event.preventDefault();
      this.close();
    }
  }

  choose(option) {
    this.input.value = option.dataset.value ?? option.textContent.trim();
    if (this.into) this.into.value = option.dataset.id ?? "";
    this.close();
    this.status.textContent = `${this.input.value} taken.`;
    this.input.dispatchEvent(new Event("change", { bubbles: true }));
    this.input.dispatchEvent(new CustomEvent("suggestion-taken", { bubbles: true, detail: { ...option.dataset } }));
  }
}

/* Safe to call again on the same root: a field is dressed once. */
export function dressComboboxes(root = document) {
  const inputs = root.matches?.("[data-suggest-url]") ? [root] : root.querySelectorAll("[data-suggest-url]");
  for (const input of inputs) {
    if (input.getAttribute("role") !== "combobox") new Combobox(input);
  }
}

dressComboboxes();
document.addEventListener("htmx:load", (event) => dressComboboxes(event.detail.elt));
document.addEventListener("card-added", (event) => dressComboboxes(event.target));

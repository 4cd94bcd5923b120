// @ts-check
// Everything by keyboard: what tabs and Enter do not reach quickly, and a list of it on "?". Single keys can be turned off.
import { html, useEffect, useRef, useState } from "../controls/ui.js";
import { Button } from "../controls/controls.js";
import { go } from "../controls/route.js";
import { recall, remember } from "../controls/scrap.js";
import { useNotebook } from "../notebook/notebook.js";
import { say } from "../words/words.js";
import { showKeys, TABS } from "./page.js";

const OFF = "scantling keys off";
const LIST = ["digits", "fine", "list", "lines", "open", "next", "find", "back", "plan", "undo", "help"];
const LINES = "main :is(a, button).row";

/** Those that can be seen. @param {string} what @returns {HTMLElement[]} */
function seen(what) {
  const found = /** @type {HTMLElement[]} */ ([...document.querySelectorAll(what)]);
  return found.filter((one) => one.getClientRects().length);
}

/** To the line before the one in hand, or after it. @param {number} by @returns {boolean} whether a line is in hand */
function step(by) {
  const lines = seen(LINES);
  const here = lines.indexOf(/** @type {HTMLElement} */ (document.activeElement));
  lines[here + by]?.focus();
  return here >= 0;
}

/** @param {string} digit to the field that takes it where one reads a tape, else to a screen */
function digit(digit) {
  const [field] = seen(".pad input[type=text]");
  if (field) field.focus();
  else if (TABS[Number(digit) - 1]) go(TABS[Number(digit) - 1]);
  return !field;
}

/** Presses the button that says it hears the key, where the keyboard is or else the first. @param {string} key */
function hears(key) {
  const buttons = seen(`[data-keys~="${CSS.escape(key)}"] > button`);
  const here = document.activeElement?.closest("[data-hears]");
  const button = buttons.find((one) => here?.contains(one)) ?? buttons[0];
  button?.click();
  return Boolean(button);
}

/** @param {string} key @returns {boolean} whether the key means something */
function press(key) {
  if (hears(key)) return true;
  if (/^[0-9]$/.test(key)) return digit(key);
  if (key === "ArrowDown" || key === "ArrowUp") return step(key === "ArrowDown" ? 1 : -1);
  if (key === "Escape") go(location.hash.split("/")[1]);
  const to = { l: LINES, n: "main .button-main:not(:disabled)", f: ".find input" }[key];
  if (to) seen(to)[0]?.focus();
  if (key === "?") showKeys();
  return Boolean(to) || key === "?" || key === "Escape";
}

/** Whether a key belongs to the field or the group of choices that it was pressed in. @param {KeyboardEvent} event */
function isElsewhere({ target, altKey, defaultPrevented }) {
  return altKey || defaultPrevented || (target instanceof Element && target.matches("input, textarea, [role=slider]"));
}

export function Keys() {
  const { undo } = useNotebook();
  const [off, setOff] = useState(Boolean(recall(OFF)));
  const list = useRef(/** @type {HTMLDialogElement | null} */ (null));
  const hear = useRef(/** @type {(event: KeyboardEvent) => void} */ (() => {}));
  hear.current = (event) => {
    if (isElsewhere(event) || list.current?.open) return;
    const isUndo = (event.ctrlKey || event.metaKey) && event.key === "z";
    if (isUndo) undo();
    else if (off || event.ctrlKey || event.metaKey || !press(event.key)) return;
    event.preventDefault();
  };
  useEffect(() => {
    const pressed = (/** @type {KeyboardEvent} */ event) => hear.current(event);
    document.addEventListener("keydown", pressed);
    return () => document.removeEventListener("keydown", pressed);
  }, []);
  const turn = () => {
    remember(OFF, off ? "" : "off");
    setOff(!off);
  };
  return html`<dialog class="keys" ref=${list} aria-labelledby="keys">
    <h2 id="keys">${say("keys")}</h2>
    <dl>${LIST.map((one) => html`<div key=${one}><dt>${say(`keys-line-${one}.key`, { last: TABS.length })}</dt><dd>${say(`keys-line-${one}`)}</dd></div>`)}</dl>
    <div class="last-row">
      <${Button} onTouch=${turn}>${say(off ? "keys.on" : "keys.off")}<//>
      <${Button} kind="main" onTouch=${() => list.current?.close()}>${say("close")}<//>
    </div>
  </dialog>`;
}

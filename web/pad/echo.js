// @ts-check
// The echo: a reading as it grows, and in words how the engine understands it.
import { html } from "../controls/ui.js";
import { Figure } from "../controls/figure.js";
import { useAnswer, useNotebook } from "../notebook/notebook.js";
import { say } from "../words/words.js";
import { kindOf } from "./kinds.js";
import { isFine } from "./marks.js";
import { splitPlain } from "./typing.js";

/** How the engine understands the text so far. @param {string} what @param {string} text @param {string} turn */
export function useEcho(what, text, turn) {
  const typed = text.trim();
  return useAnswer(typed ? ASKED[kindOf(what)](typed, { what, turn }) : null);
}

/**
 * The question that has a text of each kind read back; null while there is not enough of it to ask.
 * @type {Record<import("./kinds.js").Kind, (text: string, of: {what: string, turn: string}) => object | null>}
 */
const ASKED = {
  length: askLength,
  points: askLastPoint,
  // No thickness changes what is shown here; the question wants one all the same.
  angle: (corner, { turn }) => ({ ask: "corner", turn, corner, thickness: "1" }),
  sides: askSides,
  salvaged: (text, { what }) => ({ ask: "behind", what, text }),
  studs: (text, { what }) => ({ ask: "behind", what, text }),
  lean: (text, { what }) => ({ ask: "behind", what, text }),
  bow: (text, { what }) => ({ ask: "behind", what, text }),
  fall: (text, { what }) => ({ ask: "behind", what, text }),
};

/** A thirty-second is read back as one; all else as the tape of the house is read. @param {string} text */
function askLength(text) {
  return { ask: "read", text, ...(isFine(splitPlain(text)?.mark ?? "") && { nearest: "1/32" }) };
}

/** Of a row of points the last is echoed, the one in hand; what stands proud is read without its sign. @param {string} text */
function askLastPoint(text) {
  const last = text.split(",").at(-1)?.trim().replace(/^[-−]/, "");
  return last ? askLength(last) : null;
}

/** @param {string} text @param {{turn: string}} of */
function askSides(text, { turn }) {
  const sides = text.split(",").map((side) => side.trim());
  return sides.length === 3 && sides.every(Boolean) ? { ask: "corner", turn, sides, thickness: "1" } : null;
}

/** Kinds with more than one figure in the text, which is shown as it stands. */
const AS_WRITTEN = new Set(["sides", "points", "salvaged", "studs", "bow"]);

/** The reading as it grows. @param {{text: string, what: string, hint: string}} props */
export function Typed({ text, what, hint }) {
  if (!text) return html`<p class="waiting">${hint || say("pad-waiting")}</p>`;
  const kind = kindOf(what);
  if (kind === "angle")
    return html`<p class="hero"><span class="figure figure-huge">${text}${/[°d]/.test(text) ? "" : "°"}</span></p>`;
  if (/^[\d.]+ mm$/.test(text)) return html`<p class="hero"><${Figure} shown=${text} size="huge" /></p>`;
  const plain = AS_WRITTEN.has(kind) ? null : splitPlain(text);
  if (!plain) return html`<p class="hero as-written">${text}</p>`;
  const shown = [plain.whole, plain.mark].filter(Boolean).join(" ");
  return html`<p class="hero"><${Figure} shown=${shown} size="huge" lean=${plain.lean && say(`pad-lean-${plain.lean}.short`)} /></p>`;
}

/**
 * What the engine makes of it. Half a reading is not yet wrong: the refusal turns red only when it was to be saved.
 * @param {{echo: any, text: string, refused: boolean}} props
 */
export function Echo({ echo, text, refused }) {
  const { engine } = useNotebook();
  if (!text.trim()) return html`<p class="echo" role="status"></p>`;
  if (engine !== "awake") {
    return html`<p class="echo" role="status">${say(engine === "waking" ? "pad-echo.waking" : "pad-echo.failed")}</p>`;
  }
  if (echo.error && refused) return html`<p class="wrong" role="alert">${echo.error.message}</p>`;
  if (echo.error) return html`<p class="echo" role="status">${echo.error.message}</p>`;
  return html`<p class="echo" role="status">${echo.answer ? echoWords(echo.answer) : ""}</p>`;
}

/** @param {any} answer */
function echoWords(answer) {
  if (!answer.words) return answer.working.join("; ");
  return answer.feet && !/ mm$/.test(answer.length.shown) ? html`${answer.words} · <span class="unbroken">${answer.feet}</span>` : answer.words;
}

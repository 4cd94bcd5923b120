// @ts-check
// Which pad a figure is entered on: the tape for a length, and others for a corner, points, studs, a lean, a fall.
import { html, useState } from "../controls/ui.js";
import { Button, Choice } from "../controls/controls.js";
import { say } from "../words/words.js";
import { kindOf } from "./kinds.js";
import { Digits, Written } from "./pad.js";
import { InchOf, Tape } from "./tape.js";
import { addDigit } from "./typing.js";

/** @param {string} what of a thing that is read */
export function padFor(what) {
  return PADS[kindOf(what)];
}

const PADS = { length: Tape, angle: Degrees, sides: Sides, points: Points, salvaged: Tape, studs: Studs, lean: Lean, bow: Bow, fall: Fall };
const SIDES = ["here", "next", "across"].map((side) => say(`pad-sides-${side}`));

/** @param {{text: string, onText: (text: string) => void, onEnter: () => void}} props */
function Degrees({ text, onText, onEnter }) {
  return html`
    <${Written} label=${say("pad-degrees")} text=${text} onText=${onText} onEnter=${onEnter} />
    <${Digits} text=${text} onText=${(typed) => onText(typed)} />
    <div class="leans"><${Button} onTouch=${() => onText(addDigit(text, "."))}>${say("pad-decimal")}<//>
      <${Button} onTouch=${() => onText("90")}>${say("pad-degrees.square")}<//></div>`;
}

/**
 * Three lengths in one text, parted by commas.
 * @param {{text: string, onText: (text: string) => void, onEnter: () => void}} props
 */
function Sides({ text, onText, onEnter }) {
  const [active, setActive] = useState("0");
  const sides = SIDES.map((_, place) => text.split(", ")[place] ?? "");
  const put = (side) => {
    const changed = sides.map((old, place) => (String(place) === active ? side.replaceAll(",", "") : old));
    onText(changed.some(Boolean) ? changed.join(", ") : "");
  };
  const side = sides[Number(active)];
  return html`
    <${Choice} name="side" legend=${say("pad-sides.which")} value=${active} onPick=${setActive}
      choices=${SIDES.map((words, place) => [String(place), html`${words}<b>${sides[place] || "–"}</b>`])} />
    <${Written} label=${say("pad-sides")} text=${side} onText=${put} onEnter=${onEnter} />
    <${InchOf} text=${side} onText=${put} />
    <${Digits} text=${side} onText=${put} />`;
}

/**
 * Depths at one point after another, in one text, parted by commas.
 * @param {{text: string, onText: (text: string) => void, onEnter: () => void}} props
 */
function Points({ text, onText, onEnter }) {
  const [active, setActive] = useState("0");
  const points = text.split(", ");
  const put = (point) => {
    const changed = points.map((old, place) => (String(place) === active ? point.replaceAll(",", "") : old));
    onText(changed.join(", "));
  };
  const another = () => {
    setActive(String(points.length));
    onText(`${text}, `);
  };
  const point = points[Number(active)] ?? "";
  const proud = point.startsWith("-");
  return html`
    <${Choice} name="point" legend=${say("pad-points.which")} value=${active} onPick=${setActive}
      choices=${points.map((one, place) => [String(place), html`${place + 1}<b>${one || "–"}</b>`])} />
    <div class="leans"><${Button} disabled=${points.some((one) => !one)} onTouch=${another}>${say("pad-points.next")}<//>
      <${Button} pressed=${proud} onTouch=${() => put(proud ? point.slice(1) : `-${point}`)}>${say("pad-points.proud")}<//></div>
    <${Written} label=${say("pad-points")} text=${point} onText=${put} onEnter=${onEnter} />
    <${InchOf} text=${point} onText=${put} />
    <${Digits} text=${point} onText=${put} />`;
}

/**
 * Where the studs are, one after another, or the first and how far apart they go on.
 * @param {{text: string, onText: (text: string) => void, onEnter: () => void}} props
 */
function Studs({ text, onText, onEnter }) {
  const parts = text.split(", ");
  const every = parts.at(-1)?.startsWith("every ") ? "every " : "";
  const last = (parts.at(-1) ?? "").slice(every.length);
  const put = (/** @type {string} */ stud) => onText([...parts.slice(0, -1), `${every}${stud}`].join(", "));
  return html`
    <${Written} label=${say("pad-studs")} text=${text} onText=${onText} onEnter=${onEnter} />
    <div class="leans"><${Button} disabled=${!last} onTouch=${() => onText(`${text}, `)}>${say("pad-studs.next")}<//>
      <${Button} disabled=${!last || every} onTouch=${() => onText(`${text}, every `)}>${say("pad-studs.every")}<//></div>
    <${InchOf} text=${last} onText=${put} />
    <${Digits} text=${last} onText=${put} />`;
}

/** As what the gap and the end it is at are written. */
const LEAN = { kind: "lean", ends: ["top", "foot"] };
const FALL = { kind: "fall", ends: ["left", "right"] };

/** How far a level stands off, and at which of its ends. @param {EntryProps} props */
function Lean(props) {
  return html`<${GapAtEnd} ...${props} ...${LEAN} />`;
}

/** How much lower the floor is, and at which end of the wall. @param {EntryProps} props */
function Fall(props) {
  return html`<${GapAtEnd} ...${props} ...${FALL} />`;
}

/** How far a wall is off a straight line, which way, and then how far from the left corner. @param {EntryProps} props */
function Bow({ text, onText, onEnter }) {
  const [, gap = "", way = "", at = ""] = /^(.*?) ?(hollow|hump)?(?: at ?(.*))?$/.exec(text) ?? [];
  const write = (/** @type {string} */ off, /** @type {string} */ which, /** @type {string} */ where) =>
    onText(which ? `${off} ${which} at ${where}`.trim() : off);
  const put = (/** @type {string} */ figure) => (way ? write(gap, way, figure) : write(figure, "", ""));
  return html`
    <${Written} label=${say("pad-bow")} text=${text} onText=${onText} onEnter=${onEnter} />
    <div class="leans">
      ${["hollow", "hump"].map((one) => html`<${Button} pressed=${way === one} key=${one}
        onTouch=${() => write(gap, way === one ? "" : one, at)}>${say(`pad-bow-${one}`)}<//>`)}
      <${Button} onTouch=${() => onText("0")}>${say("pad-bow.none")}<//></div>
    <${InchOf} text=${way ? at : gap} onText=${put} />
    <${Digits} text=${way ? at : gap} onText=${put} />`;
}

/**
 * @typedef {{text: string, onText: (text: string) => void, onEnter: () => void}} EntryProps
 * @param {EntryProps & {kind: string, ends: string[]}} props
 */
function GapAtEnd({ text, onText, onEnter, kind, ends }) {
  const end = ends.find((name) => text.endsWith(name)) ?? "";
  const gap = text.slice(0, text.length - end.length).trim();
  const put = (/** @type {string} */ off) => onText([off, end].filter(Boolean).join(" "));
  const at = (/** @type {string} */ where) => onText([gap, where].filter(Boolean).join(" "));
  return html`
    <${Written} label=${say(`pad-gap-${kind}`)} text=${text} onText=${onText} onEnter=${onEnter} />
    <div class="leans">
      ${ends.map((name) => html`<${Button} pressed=${end === name} onTouch=${() => at(name)} key=${name}>${say(`pad-gap-${kind}.${name}`)}<//>`)}
      <${Button} onTouch=${() => onText("0")}>${say(`pad-gap-${kind}.none`)}<//></div>
    <${InchOf} text=${gap} onText=${put} />
    <${Digits} text=${gap} onText=${put} />`;
}

// @ts-check
// Entering one reading, standing up, with one hand. What is typed goes into the journal as it stands, engine awake or not;
// the engine only says aloud how it understands it, and is asked again when it does not.
import { html, useRef, useState } from "../parts/ui.js";
import { Button, Choice } from "../parts/controls.js";
import { Figure } from "../parts/figure.js";
import { Inch } from "../parts/inch.js";
import { useAnswer, useNotebook } from "../parts/notebook.js";
import { Digits, Leans, Written } from "../parts/pad.js";
import { Page } from "../parts/page.js";
import { go, goInstead, link } from "../parts/route.js";
import { nextRow, useSurvey } from "../parts/survey.js";
import { addDigit, setMark, splitPlain } from "../parts/typing.js";
import { addReading } from "../parts/write.js";

/** @param {{place: string[]}} props the thing that is read, and what of it */
export function Reading({ place: [of, what] }) {
  const { room } = useNotebook();
  const survey = useSurvey(room.id);
  const found = survey.rows.find((one) => one.of === of && one.what === what);
  // A row may go while a person types, when the engine wakes or another device speaks: what is typed must not go with it.
  const row = useKept(found);
  if (!row)
    return html`<${Page} title="Reading" tab="survey"><p>There is nothing here to read now.</p>
    <p class="onward"><a href=${link("survey")}>Back to the room</a></p><//>`;
  return html`<${Entering} row=${row} survey=${survey} />`;
}

/** The last that there was. @template T @param {T | undefined} found */
function useKept(found) {
  const kept = useRef(found);
  if (found) kept.current = found;
  return kept.current;
}

/** @param {{row: any, survey: any}} props */
function Entering({ row, survey }) {
  const { unreached } = useNotebook();
  const [text, setText] = useState("");
  const [bySides, setBySides] = useState(false);
  const [refused, setRefused] = useState(false);
  const what = row.what === "corner" && bySides ? "sides" : row.what;
  const echo = useEcho(what, text, turnOf(row, survey));
  const next = nextRow(survey.rows, row.key, unreached);
  const { save, saving } = useSaving(row, what, text, next);
  const enter = () => (echo.error ? setRefused(true) : save());
  const change = (typed) => {
    setRefused(false);
    setText(typed);
  };
  const choose = (by) => {
    setBySides(by === "sides");
    change("");
  };
  const Pad = PADS[/** @type {keyof PADS} */ (what)] ?? Tape;
  return html`<${Page} title=${row.title} aside=${`reading ${row.readings.length + 1}`} kind="entry">
    <section class="reading">
      <${LastSaved} rows=${survey.rows} row=${row} />
      <${Typed} text=${text} what=${what} hint=${row.hint} />
      <${Echo} echo=${echo} text=${text} refused=${refused} />
    </section>
    <section class="pad" aria-label="Enter the reading">
      ${
        row.what === "corner"
          ? html`<${Choice} name="by" legend="Read" value=${what} onPick=${choose} choices=${WAYS} />`
          : null
      }
      <${Pad} text=${text} onText=${change} onEnter=${enter} />
      <div class="last-row">
        <${Button} onTouch=${() => go("survey")}>Back<//>
        <${Button} kind="main" disabled=${!text.trim() || saving} onTouch=${enter}
          next=${next ? `next: ${next.title}` : "then back to the room"}>Save<//>
      </div>
    </section>
  <//>`;
}

/**
 * Into the journal, then on to what comes next.
 * @param {any} row @param {string} what @param {string} text @param {any} next
 */
function useSaving(row, what, text, next) {
  const { journal, act, setSaved } = useNotebook();
  const [saving, setSaving] = useState(false);
  const save = async () => {
    if (!text.trim() || saving) return;
    setSaving(true);
    const saved = await act(() => addReading(journal, row.of, what, text), `${row.title}: ${text}`);
    setSaving(false);
    if (!saved) return;
    setSaved({ key: row.key, text });
    if (next) goInstead("survey", "read", next.of, next.what);
    else goInstead("survey");
  };
  return { save, saving };
}

/** Inside or outside, for a corner. @param {any} row @param {any} survey */
function turnOf(row, survey) {
  return survey.walls?.find((wall) => wall.id === row.of)?.turn ?? "inside";
}

/** How the engine understands the text so far. @param {string} what @param {string} text @param {string} turn */
export function useEcho(what, text, turn) {
  const typed = text.trim();
  const corner = isCorner(what) ? { corner: typed } : { sides: typed.split(",").map((side) => side.trim()) };
  const behind = what === "studs" || what === "plumb";
  const length = !isCorner(what) && what !== "sides";
  // Of a row of points the last is echoed, the one in hand; what stands proud is read without its sign.
  const asked = isRow(what) ? typed.split(",").at(-1)?.trim().replace(/^[-−]/, "") : typed;
  const ready = typed && (what !== "sides" || (corner.sides?.length === 3 && corner.sides.every(Boolean)));
  // No thickness changes what is shown here; the question wants one all the same.
  return useAnswer(
    !ready || !asked ? null : behind ? { ask: "behind", what, text: typed } : length ? { ask: "read", text: asked } : { ask: "corner", turn, ...corner, thickness: "1" },
  );
}

/** The reading as it grows. @param {{text: string, what: string, hint: string}} props */
export function Typed({ text, what, hint }) {
  if (!text) return html`<p class="waiting">${hint || "Touch the mark you see, type, or say it."}</p>`;
  const plain = what !== "sides" && what !== "studs" && !isRow(what) && splitPlain(text);
  if (isCorner(what))
    return html`<p class="hero"><span class="figure figure-huge">${text}${/[°d]/.test(text) ? "" : "°"}</span></p>`;
  if (!plain) return html`<p class="hero as-written">${text}</p>`;
  const shown = [plain.whole, plain.mark].filter(Boolean).join(" ");
  return html`<p class="hero"><${Figure} shown=${shown} size="huge" lean=${plain.lean} /></p>`;
}

/**
 * What the engine makes of it. Half a reading is not yet wrong: the refusal turns red only when it was to be saved.
 * @param {{echo: any, text: string, refused: boolean}} props
 */
export function Echo({ echo, text, refused }) {
  const { engine } = useNotebook();
  if (!text.trim()) return html`<p class="echo" role="status"></p>`;
  if (engine !== "awake") {
    const why = engine === "waking" ? "Engine waking" : "The engine is not running";
    return html`<p class="echo" role="status">${why}: this will be saved as typed.</p>`;
  }
  if (echo.error && refused) return html`<p class="wrong" role="alert">${echo.error.message}</p>`;
  if (echo.error) return html`<p class="echo" role="status">${echo.error.message}</p>`;
  return html`<p class="echo" role="status">${echo.answer ? echoWords(echo.answer) : ""}</p>`;
}

/** @param {any} answer */
function echoWords(answer) {
  if (answer.words && !answer.feet) return answer.words;
  return answer.words
    ? html`${answer.words} · <span class="unbroken">${answer.feet}</span>`
    : answer.working.join("; ");
}

/** What was just saved, and in red if it does not agree with what was read before. @param {{rows: any[], row: any}} props */
function LastSaved({ rows, row }) {
  const { saved } = useNotebook();
  const last = rows.find((one) => one.key !== row.key && one.key === saved?.key);
  if (!last) return null;
  if (last.state !== "check") return html`<p class="pencil just-saved">${last.title}: ${saved.text}, saved here.</p>`;
  return html`<p class="wrong just-saved">${last.title}: ${last.note}
    <a href=${link("survey", "read", last.of, last.what)}>Read it again</a></p>`;
}

/** @param {{text: string, onText: (text: string) => void, onEnter: () => void}} props */
export function Tape({ text, onText, onEnter }) {
  return html`
    <${Written} label="type it or say it" text=${text} onText=${onText} onEnter=${onEnter} />
    <${Leans} text=${text} onText=${onText} />
    <${InchOf} text=${text} onText=${onText} />
    <${Digits} text=${text} onText=${onText} />`;
}

/** @param {{text: string, onText: (text: string) => void}} props */
function InchOf({ text, onText }) {
  const plain = splitPlain(text);
  const whole = plain?.whole ?? "";
  const { answer } = useAnswer(whole ? { ask: "sum", text: `${whole} + 1` } : null);
  return html`<${Inch} mark=${plain?.mark ?? ""} chosen=${Boolean(text)} whole=${whole || "0"}
    next=${whole ? (answer?.length?.shown ?? "").replace('"', "") : "1"} onMark=${(mark) => onText(setMark(text, mark))} />`;
}

/** @param {{text: string, onText: (text: string) => void, onEnter: () => void}} props */
function Degrees({ text, onText, onEnter }) {
  return html`
    <${Written} label="degrees, such as 91 or 88.5" text=${text} onText=${onText} onEnter=${onEnter} />
    <${Digits} text=${text} onText=${(typed) => onText(typed)} />
    <div class="leans"><${Button} onTouch=${() => onText(addDigit(text, "."))}>point<//>
      <${Button} onTouch=${() => onText("90")}>square, 90<//></div>`;
}

/** @type {[string, string][]} */
const WAYS = [
  ["corner", "degrees on a gauge"],
  ["sides", "three sides"],
];
const PADS = {
  corner: Degrees,
  left_corner: Degrees,
  right_corner: Degrees,
  sides: Sides,
  depth_left: Points,
  depth_right: Points,
  depth_head: Points,
  depth_sill: Points,
  studs: Studs,
  plumb: Lean,
};
const isCorner = (/** @type {string} */ what) => PADS[/** @type {keyof PADS} */ (what)] === Degrees;
const isRow = (/** @type {string} */ what) => PADS[/** @type {keyof PADS} */ (what)] === Points;
const SIDES = ["along this wall", "along the next wall", "across, end to end"];

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
    <${Choice} name="side" legend="Side" value=${active} onPick=${setActive}
      choices=${SIDES.map((words, place) => [String(place), html`${words}<b>${sides[place] || "–"}</b>`])} />
    <${Written} label="type this side or say it" text=${side} onText=${put} onEnter=${onEnter} />
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
    <${Choice} name="point" legend="Point" value=${active} onPick=${setActive}
      choices=${points.map((one, place) => [String(place), html`${place + 1}<b>${one || "–"}</b>`])} />
    <div class="leans"><${Button} disabled=${points.some((one) => !one)} onTouch=${another}>next point<//>
      <${Button} pressed=${proud} onTouch=${() => put(proud ? point.slice(1) : `-${point}`)}>jamb stands proud<//></div>
    <${Written} label="type this point or say it" text=${point} onText=${put} onEnter=${onEnter} />
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
    <${Written} label="from the left corner: 14 1/2, every 16" text=${text} onText=${onText} onEnter=${onEnter} />
    <div class="leans"><${Button} disabled=${!last} onTouch=${() => onText(`${text}, `)}>next stud<//>
      <${Button} disabled=${!last || every} onTouch=${() => onText(`${text}, every `)}>and so on, every …<//></div>
    <${InchOf} text=${last} onText=${put} />
    <${Digits} text=${last} onText=${put} />`;
}

/**
 * How far a level stands off, and at which of its ends.
 * @param {{text: string, onText: (text: string) => void, onEnter: () => void}} props
 */
function Lean({ text, onText, onEnter }) {
  const end = / ?(top|foot)$/.exec(text)?.[1] ?? "";
  const gap = text.replace(/ ?(top|foot)$/, "");
  const put = (/** @type {string} */ off) => onText([off, end].filter(Boolean).join(" "));
  const at = (/** @type {string} */ where) => onText([gap, where].filter(Boolean).join(" "));
  return html`
    <${Written} label="1/4 top, 1/4 foot, or 0" text=${text} onText=${onText} onEnter=${onEnter} />
    <div class="leans">
      <${Button} pressed=${end === "top"} onTouch=${() => at("top")}>off at the top<//>
      <${Button} pressed=${end === "foot"} onTouch=${() => at("foot")}>off at the foot<//>
      <${Button} onTouch=${() => onText("0")}>plumb<//></div>
    <${InchOf} text=${gap} onText=${put} />
    <${Digits} text=${gap} onText=${put} />`;
}

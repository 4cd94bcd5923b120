// @ts-check
// Entering one reading, standing up, with one hand. What is typed goes into the journal as it stands, engine awake or not;
// the engine only says aloud how it understands it, and is asked again when it does not.
import { html, useRef, useState } from "../../controls/ui.js";
import { Button, Choice } from "../../controls/controls.js";
import { go, goInstead, link, stayHere } from "../../controls/route.js";
import { Page } from "../../frame/page.js";
import { Drawing } from "../../drawings/drawing.js";
import { RoomInView } from "../../drawings/drawn.js";
import { useAnswer, useLengths, useNotebook } from "../../notebook/notebook.js";
import { nextRow, useSurvey } from "../../notebook/survey.js";
import { addReading, asWritten } from "../../notebook/write.js";
import { Echo, Typed, useEcho } from "../../pad/echo.js";
import { kindOf } from "../../pad/kinds.js";
import { padFor } from "../../pad/pads.js";
import { say } from "../../words/words.js";

/** @param {{place: string[]}} props the thing that is read, and what of it */
export function Reading({ place: [of, what] }) {
  const { room } = useNotebook();
  const survey = useSurvey(room.id);
  const found = survey.rows.find((one) => one.of === of && one.what === what);
  // A row may go while a person types, when the engine wakes or another device speaks: what is typed must not go with it.
  const row = useKept(found);
  if (!row)
    return html`<${Page} title=${say("reading")} tab="survey"><p>${say("reading-none")}</p>
    <p class="onward"><a href=${link("survey")}>${say("back-to-room")}</a></p><//>`;
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
  const { room, unreached } = useNotebook();
  const [text, setText] = useState("");
  const [bySides, setBySides] = useState(false);
  const [refused, setRefused] = useState(false);
  const what = row.what === "corner" && bySides ? "sides" : row.what;
  const lengths = useLengths();
  const written = kindOf(what) === "angle" ? text : asWritten(text, lengths);
  const echo = useEcho(what, written, turnOf(row, survey));
  const next = nextRow(survey.rows, row.key, unreached);
  const { save, saving } = useSaving(row, what, written, next);
  const enter = () => (echo.error ? setRefused(true) : save());
  const change = (typed) => {
    setRefused(false);
    setText(typed);
  };
  const choose = (by) => {
    setBySides(by === "sides");
    change("");
  };
  const Pad = padFor(what);
  return html`<${Page} title=${row.title} aside=${say("reading-number", { number: row.readings.length + 1 })} kind="entry"
    view=${html`<${RoomInView} wall=${room.walls.find((/** @type {any} */ one) => one.id === row.wall)} />`}>
    <section class="reading">
      <${LastSaved} rows=${survey.rows} row=${row} />
      <${Held} row=${row} survey=${survey} what=${what} />
      <${Typed} text=${written} what=${what} hint=${row.hint} />
      <${Echo} echo=${echo} text=${written} refused=${refused} />
    </section>
    <section class="pad" aria-label=${say("reading-pad")}>
      ${
        row.what === "corner"
          ? html`<${Choice} name="by" legend=${say("reading-by")} value=${what} onPick=${choose} choices=${WAYS} />`
          : null
      }
      <${Pad} text=${text} onText=${change} onEnter=${enter} />
      <div class="last-row">
        <${Button} onTouch=${() => go("survey")}>${say("back")}<//>
        <${Button} kind="main" disabled=${!text.trim() || saving} onTouch=${enter}
          next=${onward(next, survey.known)}>${say("save")}<//>
      </div>
    </section>
  <//>`;
}

/** What comes after this one. @param {any} next @param {boolean} known */
function onward(next, known) {
  if (!next) return say("reading-onward");
  return say(known ? "reading-onward.next" : "reading-onward.then", { title: next.title });
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
    const stays = stayHere();
    setSaving(true);
    const saved = await act(() => addReading(journal, row.of, what, text), say("reading-done", { title: row.title, text }));
    setSaving(false);
    if (!saved) return;
    setSaved({ key: row.key, text });
    if (!stays()) return;
    if (next) goInstead("survey", "read", next.of, next.what);
    else goInstead("survey");
  };
  return { save, saving };
}

/** Inside or outside, for a corner. @param {any} row @param {any} survey */
function turnOf(row, survey) {
  return survey.walls?.find((wall) => wall.id === row.of)?.turn ?? "inside";
}

/** Where the tape is held, in a picture; nothing where there is none, or the engine sleeps. @param {{row: any, survey: any, what: string}} props */
function Held({ row, survey, what }) {
  const of = sortOf(row, survey);
  const { answer } = useAnswer(of ? { ask: "held", of, what, turn: turnOf(row, survey) } : null);
  return answer?.drawing ? html`<${Drawing} svg=${answer.drawing} kind="held" label=${say("reading-held")} />` : null;
}

/** What is read: a wall, a kind of opening, or a thing in the way. @param {any} row @param {any} survey */
function sortOf(row, survey) {
  const wall = survey.walls?.find((one) => one.id === row.wall);
  if (!wall || row.of === wall.id) return wall && "wall";
  return wall.openings.find((one) => one.id === row.of)?.kind ?? "thing";
}

/** What was just saved, and in red if it does not agree with what was read before. @param {{rows: any[], row: any}} props */
function LastSaved({ rows, row }) {
  const { saved } = useNotebook();
  const last = rows.find((one) => one.key !== row.key && one.key === saved?.key);
  if (!last) return null;
  if (last.state !== "check") return html`<p class="pencil just-saved">${say("reading-saved", { title: last.title, text: saved.text })}</p>`;
  return html`<p class="wrong just-saved">${say("reading-saved.check", { title: last.title, note: last.note })}
    <a href=${link("survey", "read", last.of, last.what)}>${say("reading-again")}</a></p>`;
}

const WAYS = ["corner", "sides"].map((way) => [way, say(`reading-by-${way}`)]);

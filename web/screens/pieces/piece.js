// @ts-check
// One piece, at arm's length: its figure, how it lies on the saw, the next thing to do with it, and the working behind it.
import { html, useState } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { Figure, inWords } from "../../controls/figure.js";
import { go, link } from "../../controls/route.js";
import { PieceDrawn, useDrawn } from "../../drawings/drawn.js";
import { Cautions } from "../../frame/cautions.js";
import { Page } from "../../frame/page.js";
import { stateWords } from "../../notebook/listed.js";
import { useNotebook } from "../../notebook/notebook.js";
import { markPiece, strike } from "../../notebook/write.js";
import { Photos } from "../../photos/photos.js";
import { say } from "../../words/words.js";
import { Issue } from "./issue.js";
import { Stick, Turns } from "./joints.js";

/** What is done next with a piece that stands so. @type {Record<string, string>} */
const NEXT = { "to cut": "cut", recut: "cut", cut: "fitted" };

/** @param {{piece: any, answer: any, older: boolean}} props */
export function Piece({ piece, answer, older }) {
  return html`<${Page} title=${piece.part_name} aside=${piece.profile_shown} tab="pieces" kind="one-piece" older=${older}>
    <${PieceSheet} piece=${piece} answer=${answer} />
  <//>`;
}

/** All that is told of a piece, on a page of its own or beside the list. @param {{piece: any, answer: any, beside?: boolean}} props */
export function PieceSheet({ piece, answer, beside = false }) {
  const drawn = useDrawn(piece);
  const isSeen = useSeen() && Boolean(drawn);
  return html`<div class="piece-head">
      <span class="ring ring-large ${piece.provisional ? "ring-provisional" : ""}">${piece.letter}</span>
      <p class="hero"><${Figure} shown=${piece.cut.shown} size="big" /></p>
    </div>
    <p class="said-of">${say("piece-cut-from", { edge: piece.cut_from, length: inWords(piece.plus_minus.shown) })}</p>
    <${Stands} piece=${piece} />
    <dl class="faces">
      <${Face} name=${say("piece-along", { edge: piece.edges[1] })} length=${piece.front} cut=${piece.cut} />
      <${Face} name=${say("piece-along", { edge: piece.edges[0] })} length=${piece.back} cut=${piece.cut} />
    </dl>
    <${PieceDrawn} piece=${piece} answer=${drawn} />
    <div class="ends">
      <${End} side="left" end=${piece.left} drawn=${isSeen} /><${End} side="right" end=${piece.right} drawn=${isSeen} />
    </div>
    ${piece.tried?.map((/** @type {string} */ words) => html`<p class="said-of" key=${words}>${say("piece-tried", { what: words })}</p>`)}
    <${Turns} piece=${piece} /><${Stick} piece=${piece} />
    ${piece.flags.map((flag) => html`<p class="flag" key=${flag.key}>${flag.message}</p>`)}
    <h2>${say("piece-why")}</h2>
    <ul class="rows working">${piece.working.map((step, place) => html`<${Step} step=${step} key=${place} />`)}</ul>
    <${History} piece=${piece} />
    ${piece.provisional ? null : html`<${Photos} of=${piece.id} from=${["pieces", piece.letter]} key=${piece.id} />`}
    <${Cautions} cautions=${answer.cautions} />
    ${piece.kind === "free" ? html`<${Change} piece=${piece} />` : null}
    ${piece.state === "to cut" && piece.place_of ? html`<p class="onward"><a href=${link("pieces", piece.letter, "there")}>${say("piece-there")}</a></p>` : null}
    ${beside && piece.provisional && piece.place_of ? html`<p class="onward"><a href=${link("pieces", piece.letter, "place")}>${say("piece-place")}</a></p>` : null}
    ${beside && piece.provisional ? null : html`<${Doing} piece=${piece} answer=${answer} />`}`;
}

/** Whether the ends are seen in the drawing at once: what was told while the engine woke stays, or the page would move. */
function useSeen() {
  const { engine } = useNotebook();
  const [isSeen] = useState(engine === "awake");
  return isSeen;
}

/** How it stands, in words; in red what is to be done about it. @param {{piece: any}} props */
function Stands({ piece }) {
  const state = stateWords(piece.state);
  const isTo = piece.cut_to && piece.state !== "recut";
  const cut = [
    isTo ? say("piece-stands", { state, length: withoutMark(piece.cut_to) }) : state,
    piece.as_cut ? say("piece-stands.read", { text: piece.as_cut.text }) : "",
  ];
  const words = [
    cut.filter(Boolean).join(", "),
    piece.provisional ? say("piece-stands.new") : "",
    piece.in_place ? say("piece-stands.place") : "",
    piece.salvaged ? say("piece-stands.there") : "",
  ];
  return html`<p class="stands">${words.filter(Boolean).join("; ")}</p>
    ${piece.change ? html`<p class="wrong" role="status">${piece.change.message}</p>` : null}`;
}

/** The next thing low and wide, the others quieter over it. @param {{piece: any, answer: any}} props */
function Doing({ piece, answer }) {
  const { journal, act } = useNotebook();
  const place = html`<${Button} onTouch=${() => go("pieces", piece.letter, "place")}>${say("piece-place.short")}<//>`;
  if (piece.provisional)
    return html`<div class="doing"><div class="side-by-side">${place}<${Back} /></div><${Issue} answer=${answer} /></div>`;
  const mark = (/** @type {string} */ state) =>
    act(() => markPiece(journal, piece, state), say(`piece-marked-${state}`, { letter: piece.letter }));
  const state = NEXT[piece.state];
  const isCut = piece.state === "cut" || piece.state === "fitted";
  return html`<div class="doing">
    <div class="side-by-side">
      ${isCut ? html`<${Button} onTouch=${() => mark("recut")}>${say("piece-recut")}<//>` : null}
      ${isCut ? null : place}
      ${piece.state === "cut" ? html`<${Button} onTouch=${() => go("pieces", piece.letter, "as-cut")}>${say("piece-as-cut")}<//>` : null}
    </div>
    <div class="last-row"><${Back} />
      ${state ? html`<${Button} kind="main" onTouch=${() => mark(state)}>${say(`piece-mark-${state}`)}<//>` : null}</div>
  </div>`;
}

function Back() {
  return html`<${Button} onTouch=${() => go("pieces")}>${say("back")}<//>`;
}

/** What was said and read of it; every line can be struck, and restored. @param {{piece: any}} props */
function History({ piece }) {
  const lines = [
    ...piece.said.map((one) => ({ ...one, words: say("piece-said.marked", { what: one.shown }) })),
    ...piece.places.map((one) => ({ ...one, words: say("piece-said.place", { what: one.shown }) })),
    ...piece.there.map((one) => ({ ...one, words: say("piece-said.there", { what: one.shown }) })),
  ];
  if (!lines.length) return null;
  return html`<details class="more"><summary>${say("piece-said")}</summary>
    <ul class="rows">${lines.map((line) => html`<${Line} line=${line} key=${line.entry} />`)}</ul>
  </details>`;
}

/** @param {{line: any}} props */
function Line({ line }) {
  const { journal, act } = useNotebook();
  const { words } = line;
  const [entry, why] = line.struck ? [line.strike, "restored by hand"] : [line.entry, "struck by hand"];
  const label = say(line.struck ? "restore.what" : "strike.what", { what: words });
  const done = say(line.struck ? "restore.text" : "strike.text", { what: words });
  return html`<li class="row">
    <span class="row-words">${line.struck ? html`<s>${words}</s>` : html`<span>${words}</span>`}</span>
    <${Button} label=${label} onTouch=${() => act(() => strike(journal, entry, why), done)}>${say(line.struck ? "restore" : "strike")}<//>
  </li>`;
}

/** A length inside running text: 1/32, not 1/32". @param {any} length */
export function withoutMark(length) {
  return length.shown.replace('"', "");
}

/** @param {{step: any}} props */
export function Step({ step }) {
  return html`<li class="row">
    <span class="row-words"><span>${step.text}</span>
      ${step.readings.length ? html`<small>${say("piece-step", { readings: step.readings.join(" · ") })}</small>` : null}</span>
    ${step.value ? html`<${Figure} shown=${step.value.shown} />` : null}
  </li>`;
}

/** One edge's length, where it is another than the one cut to. @param {{name: string, length: any, cut: any}} props */
function Face({ name, length, cut }) {
  if (length.shown === cut.shown) return null;
  return html`<div><dt>${name}</dt><dd><${Figure} shown=${length.shown} /></dd></div>`;
}

/** To the form of a piece of one's own; all that are alike come of one. @param {{piece: any}} props */
function Change({ piece }) {
  const [, free] = piece.key.split(" ");
  return html`<p class="onward"><a href=${link("pieces", "free", free)}>${say("free.change")}</a></p>`;
}

/**
 * One end: its settings are seen in the drawing at the saw, and told here to those who hear the page, or until it is drawn.
 * @param {{side: string, end: any, drawn: boolean}} props
 */
function End({ side, end, drawn }) {
  const long = say("piece-saw.long", { edge: end.long_edge });
  const flat = () => end.at_saw ?? say("piece-saw.flat", { miter: end.saw_shown, bevel: end.bevel_shown });
  const settings = end.nested !== null
    ? [flat(), say("piece-saw.nested", { saw: end.nested_shown }), long]
    : [say("piece-saw", { saw: end.saw_shown }), say("piece-saw.point", { point: end.point_shown }), long];
  if (end.bevel !== null && end.nested === null) settings.push(say("piece-saw.leaned", { bevel: end.bevel_shown }));
  const leans = end.leans || end.bevel !== null;
  return html`<div class="end end-${side}"><b>${say(`piece-end-${side}`, { joint: end.shown })}</b>
    ${leans ? settings.map((words) => html`<small class=${drawn && words !== end.at_saw ? "heard" : null} key=${words}>${words}</small>`) : null}
    <small>${end.said}</small></div>`;
}

// @ts-check
// One piece, at arm's length: its figure, how it lies on the saw, the next thing to do with it, and the working behind it.
import { html } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { Figure, inWords } from "../../controls/figure.js";
import { go, link } from "../../controls/route.js";
import { PieceDrawn, useDrawn } from "../../drawings/drawn.js";
import { Cautions } from "../../frame/cautions.js";
import { Page } from "../../frame/page.js";
import { useNotebook } from "../../notebook/notebook.js";
import { markPiece, strike } from "../../notebook/write.js";
import { Photos } from "../../photos/photos.js";
import { Issue } from "./issue.js";
import { Stick, Turns } from "./joints.js";

/** What is done next with a piece that stands so, and the words for it. @type {Record<string, string[]>} */
const NEXT = { "to cut": ["cut", "Mark it cut"], recut: ["cut", "Mark it cut"], cut: ["fitted", "Mark it fitted"] };

/** @param {{piece: any, answer: any, older: boolean}} props */
export function Piece({ piece, answer, older }) {
  return html`<${Page} title=${piece.part_name} aside=${piece.profile} tab="pieces" kind="one-piece" older=${older}>
    <${Sheet} piece=${piece} answer=${answer} />
  <//>`;
}

/** All that is told of a piece, on a page of its own or beside the list. @param {{piece: any, answer: any, beside?: boolean}} props */
export function Sheet({ piece, answer, beside = false }) {
  const drawn = useDrawn(piece);
  return html`<div class="piece-head">
      <span class="ring ring-large ${piece.provisional ? "ring-provisional" : ""}">${piece.letter}</span>
      <p class="hero"><${Figure} shown=${piece.cut.shown} size="big" /></p>
    </div>
    <p class="said-of">${piece.cut_from}, ± ${inWords(piece.plus_minus.shown)}</p>
    <${Stands} piece=${piece} />
    <dl class="faces">
      <${Face} name="along the ${piece.edges[1]}" length=${piece.front} cut=${piece.cut} />
      <${Face} name="along the ${piece.edges[0]}" length=${piece.back} cut=${piece.cut} />
    </dl>
    <${PieceDrawn} piece=${piece} answer=${drawn} />
    <div class="ends">
      <${End} side="left" end=${piece.left} drawn=${Boolean(drawn)} /><${End} side="right" end=${piece.right} drawn=${Boolean(drawn)} />
    </div>
    ${piece.tried?.map((/** @type {string} */ words) => html`<p class="said-of" key=${words}>Test cut, ${words}</p>`)}
    <${Turns} piece=${piece} /><${Stick} piece=${piece} />
    ${piece.flags.map((flag) => html`<p class="flag" key=${flag.key}>${flag.message}</p>`)}
    <h2>Why</h2>
    <ul class="rows working">${piece.working.map((step, place) => html`<${Step} step=${step} key=${place} />`)}</ul>
    <${History} piece=${piece} />
    ${piece.provisional ? null : html`<${Photos} of=${piece.id} from=${["pieces", piece.letter]} key=${piece.id} />`}
    <${Cautions} cautions=${answer.cautions} />
    ${piece.kind === "free" ? html`<${Change} piece=${piece} />` : null}
    ${piece.state === "to cut" && piece.place_of ? html`<p class="onward"><a href=${link("pieces", piece.letter, "there")}>It is there already, to be trimmed</a></p>` : null}
    ${beside && piece.provisional && piece.place_of ? html`<p class="onward"><a href=${link("pieces", piece.letter, "place")}>Measure it in place</a></p>` : null}
    ${beside && piece.provisional ? null : html`<${Doing} piece=${piece} answer=${answer} />`}`;
}

/** How it stands, in words; in red what is to be done about it. @param {{piece: any}} props */
function Stands({ piece }) {
  const words = [
    piece.provisional ? `${piece.state}; its letter is not issued yet` : piece.state,
    piece.cut_to && piece.state !== "recut" ? `to ${plain(piece.cut_to)}` : "",
    piece.as_cut ? `, read as ${piece.as_cut.text}` : "",
    piece.in_place ? "; measured in place" : "",
    piece.salvaged ? "; there already" : "",
  ];
  return html`<p class="stands">${words.join(" ").replace(/ +([,;])/g, "$1")}</p>
    ${piece.change ? html`<p class="wrong" role="status">${piece.change.message}</p>` : null}`;
}

/** The next thing low and wide, the others quieter over it. @param {{piece: any, answer: any}} props */
function Doing({ piece, answer }) {
  const { journal, act } = useNotebook();
  const place = html`<${Button} onTouch=${() => go("pieces", piece.letter, "place")}>Measure in place<//>`;
  if (piece.provisional)
    return html`<div class="doing"><div class="side-by-side">${place}<${Back} /></div><${Issue} answer=${answer} /></div>`;
  const mark = (/** @type {string} */ state) =>
    act(() => markPiece(journal, piece, state), `Piece ${piece.letter} ${state}`);
  const [state, words] = NEXT[piece.state] ?? [];
  const isCut = piece.state === "cut" || piece.state === "fitted";
  return html`<div class="doing">
    <div class="side-by-side">
      ${isCut ? html`<${Button} onTouch=${() => mark("recut")}>Recut it<//>` : null}
      ${isCut ? null : place}
      ${piece.state === "cut" ? html`<${Button} onTouch=${() => go("pieces", piece.letter, "as-cut")}>Enter its length as cut<//>` : null}
    </div>
    <div class="last-row"><${Back} />
      ${state ? html`<${Button} kind="main" onTouch=${() => mark(state)}>${words}<//>` : null}</div>
  </div>`;
}

function Back() {
  return html`<${Button} onTouch=${() => go("pieces")}>Back<//>`;
}

/** What was said and read of it; every line can be struck, and restored. @param {{piece: any}} props */
function History({ piece }) {
  const lines = [
    ...piece.said.map((one) => ({ ...one, words: `marked ${one.shown}` })),
    ...piece.places.map((one) => ({ ...one, words: `measured in place: ${one.shown}` })),
    ...piece.there.map((one) => ({ ...one, words: `there already: ${one.shown}` })),
  ];
  if (!lines.length) return null;
  return html`<details class="more"><summary>What was said of it</summary>
    <ul class="rows">${lines.map((line) => html`<${Line} line=${line} key=${line.entry} />`)}</ul>
  </details>`;
}

/** @param {{line: any}} props */
function Line({ line }) {
  const { journal, act } = useNotebook();
  const { words } = line;
  const [entry, why, name] = line.struck
    ? [line.strike, "restored by hand", "Restore"]
    : [line.entry, "struck by hand", "Strike"];
  const done = line.struck ? "restored" : "struck";
  return html`<li class="row">
    <span class="row-words">${line.struck ? html`<s>${words}</s>` : html`<span>${words}</span>`}</span>
    <${Button} label="${name} ${words}" onTouch=${() => act(() => strike(journal, entry, why), `${words}: ${done}`)}>${name}<//>
  </li>`;
}

/** A length inside running text: 1/32, not 1/32". @param {any} length */
export function plain(length) {
  return length.shown.replace('"', "");
}

/** @param {{step: any}} props */
export function Step({ step }) {
  return html`<li class="row">
    <span class="row-words"><span>${step.text}</span>
      ${step.readings.length ? html`<small>read as ${step.readings.join(" · ")}</small>` : null}</span>
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
  return html`<p class="onward"><a href=${link("pieces", "free", free)}>Change or strike this piece</a></p>`;
}

/**
 * One end: its settings are seen in the drawing at the saw, and told here to those who hear the page, or until it is drawn.
 * @param {{side: string, end: any, drawn: boolean}} props
 */
function End({ side, end, drawn }) {
  const long = `long point at the ${end.long_edge}`;
  const flat = end.at_saw ?? `lying flat: miter ${end.saw_shown}, bevel ${end.bevel_shown}`;
  const settings = end.nested !== null
    ? [flat, `standing at its spring: saw ${end.nested_shown}, no bevel`, long]
    : [`saw ${end.saw_shown} from square`, `point of the board ${end.point_shown}`, long];
  if (end.bevel !== null && end.nested === null) settings.push(`blade leaned ${end.bevel_shown}`);
  const leans = end.leans || end.bevel !== null;
  return html`<div class="end end-${side}"><b>${side}: ${end.shown}</b>
    ${leans ? settings.map((words) => html`<small class=${drawn && words !== end.at_saw ? "heard" : null} key=${words}>${words}</small>`) : null}
    <small>${end.said}</small></div>`;
}

// @ts-check
// One piece, at arm's length: its figure, how it lies on the saw, the next thing to do with it, and the working behind it.
import { html } from "../parts/ui.js";
import { Button } from "../parts/controls.js";
import { PieceDrawn } from "../parts/drawn.js";
import { Figure } from "../parts/figure.js";
import { Issue } from "../parts/issue.js";
import { Cautions } from "../parts/notes.js";
import { useNotebook } from "../parts/notebook.js";
import { Page } from "../parts/page.js";
import { go, link } from "../parts/route.js";
import { markPiece, strike } from "../parts/write.js";

/** What is done next with a piece that stands so, and the words for it. @type {Record<string, string[]>} */
const NEXT = { "to cut": ["cut", "Mark it cut"], recut: ["cut", "Mark it cut"], cut: ["fitted", "Mark it fitted"] };

/** @param {{piece: any, answer: any}} props */
export function Piece({ piece, answer }) {
  return html`<${Page} title=${piece.part_name} aside=${piece.profile} tab="pieces" kind="one-piece">
    <div class="piece-head">
      <span class="ring ring-large ${piece.provisional ? "ring-provisional" : ""}">${piece.letter}</span>
      <p class="hero"><${Figure} shown=${piece.cut.shown} size="big" /></p>
    </div>
    <p class="said-of">${piece.cut_from}, ± ${plain(piece.plus_minus)} in</p>
    <${Stands} piece=${piece} />
    <dl class="faces">
      <${Face} name="along the ${piece.edges[1]}" length=${piece.front} cut=${piece.cut} />
      <${Face} name="along the ${piece.edges[0]}" length=${piece.back} cut=${piece.cut} />
    </dl>
    <${PieceDrawn} piece=${piece} />
    <div class="ends"><${End} side="left" end=${piece.left} /><${End} side="right" end=${piece.right} /></div>
    ${piece.flags.map((flag) => html`<p class="flag" key=${flag.key}>${flag.message}</p>`)}
    <h2>Why</h2>
    <ul class="rows working">${piece.working.map((step, place) => html`<${Step} step=${step} key=${place} />`)}</ul>
    <${History} piece=${piece} />
    <${Cautions} cautions=${answer.cautions} />
    ${piece.key.startsWith("free ") ? html`<p class="onward"><a href=${link("pieces", "free", piece.key.split(" ")[1])}>Change or strike this piece</a></p>` : null}
    <${Doing} piece=${piece} answer=${answer} />
  <//>`;
}

/** How it stands, in words; in red what is to be done about it. @param {{piece: any}} props */
function Stands({ piece }) {
  const words = [
    piece.provisional ? `${piece.state}; its letter is not issued yet` : piece.state,
    piece.cut_to && piece.state !== "recut" ? `to ${plain(piece.cut_to)}` : "",
    piece.as_cut ? `, read as ${piece.as_cut.text}` : "",
    piece.in_place ? "; measured in place" : "",
  ];
  return html`<p class="stands">${words.join(" ").replace(/ +([,;])/g, "$1")}</p>
    ${piece.change ? html`<p class="wrong" role="status">${piece.change.message}</p>` : null}`;
}

/** The next thing low and wide, the others quieter over it. @param {{piece: any, answer: any}} props */
function Doing({ piece, answer }) {
  const { journal, act } = useNotebook();
  if (piece.provisional) return html`<div class="doing"><${Issue} answer=${answer} /><${Back} /></div>`;
  const mark = (/** @type {string} */ state) =>
    act(() => markPiece(journal, piece, state), `Piece ${piece.letter} ${state}`);
  const [state, words] = NEXT[piece.state] ?? [];
  const isCut = piece.state === "cut" || piece.state === "fitted";
  return html`<div class="doing">
    <div class="side-by-side">
      ${isCut ? html`<${Button} onTouch=${() => mark("recut")}>Recut it<//>` : null}
      ${isCut ? null : html`<${Button} onTouch=${() => go("pieces", piece.letter, "place")}>Measure in place<//>`}
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
function Step({ step }) {
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

/** @param {{side: string, end: any}} props */
function End({ side, end }) {
  const long = `long point at the ${end.long_edge}`;
  const flat = `lying flat: miter ${end.saw_shown}, bevel ${end.bevel_shown}`;
  const settings = end.nested_shown
    ? [flat, `standing at its spring: saw ${end.nested_shown}, no bevel`, long]
    : [`saw ${end.saw_shown} from square`, `point of the board ${end.point_shown}`, long];
  return html`<div class="end end-${side}"><b>${side}: ${end.shown}</b>
    ${end.saw_shown !== "0°" ? settings.map((words) => html`<small key=${words}>${words}</small>`) : null}
    ${end.bevel_shown && !end.nested_shown ? html`<small>blade leaned ${end.bevel_shown}</small>` : null}
    <small>meets ${end.meets}</small></div>`;
}

// @ts-check
// Pieces: every piece of wood that the room needs, by how it stands: what is to cut, what is cut, what is fitted.
import { html } from "../parts/ui.js";
import { Button } from "../parts/controls.js";
import { Drawing } from "../parts/drawing.js";
import { Places } from "../parts/drawn.js";
import { Asleep, NoRoom } from "../parts/empty.js";
import { Figure } from "../parts/figure.js";
import { Issue } from "../parts/issue.js";
import { issuedIn } from "../parts/listed.js";
import { Cautions, Problems, Refusal } from "../parts/notes.js";
import { useAnswer, useNotebook } from "../parts/notebook.js";
import { Page } from "../parts/page.js";
import { link } from "../parts/route.js";
import { markPiece } from "../parts/write.js";
import { AsCut, InPlace } from "./at_piece.js";
import { FreePiece } from "./free.js";
import { Piece, plain } from "./piece.js";

const GROUPS = [
  ["To cut", ["to cut", "recut"]],
  ["Cut", ["cut"]],
  ["Fitted", ["fitted"]],
];
const AT_PIECE = { "as-cut": AsCut, place: InPlace };

/** @param {{place: string[]}} props */
export function Pieces({ place: [letter, doing] }) {
  const { room } = useNotebook();
  const { answer, error, heard } = useAnswer(room ? { ask: "pieces", room: room.id } : null);
  if (!room) return html`<${Page} title="Pieces" tab="pieces"><${NoRoom} /><//>`;
  if (letter === "free") return html`<${FreePiece} id=${doing} />`;
  const piece = letter && answer?.pieces.find((one) => one.letter === letter);
  const At = AT_PIECE[/** @type {keyof AT_PIECE} */ (doing)];
  if (piece && At && piece.id) return html`<${At} piece=${piece} />`;
  if (piece) return html`<${Piece} piece=${piece} answer=${answer} />`;
  return html`<${Page} title=${`Pieces: ${room.name}`} tab="pieces" kind="pieces">
    ${heard ? null : html`<${Sleeping} />`}
    <${Refusal} error=${error} />
    ${answer ? html`<${List} answer=${answer} />` : null}
  <//>`;
}

/** @param {{answer: any}} props */
function List({ answer }) {
  const { pieces, gone, problems, warnings, cautions } = answer;
  return html`
    <${Problems} problems=${[...problems, ...warnings.map((message) => ({ key: message, message }))]} />
    ${pieces.length ? null : html`<${Nothing} />`}
    ${answer.to_issue ? html`<p class="pencil">A letter in a broken ring may change until the list is issued.</p>` : null}
    ${GROUPS.map(([name, states]) => html`<${Group} name=${name} pieces=${pieces.filter((one) => states.includes(one.state))} key=${name} />`)}
    <${Gone} gone=${gone} />
    <p class="onward"><a href=${link("pieces", "free", "new")}>Add a piece of your own</a></p>
    ${pieces.length ? html`<${Places} />` : null}
    <${Cautions} cautions=${cautions} />
    ${answer.to_issue ? html`<div class="doing"><${Issue} answer=${answer} /></div>` : null}`;
}

function Nothing() {
  return html`<div class="now">
    <h2>No pieces yet</h2>
    <p class="pencil">A piece appears once its wall and both its corners are read.</p>
    <p class="onward"><a href=${link("survey")}>To the readings</a></p>
  </div>`;
}

/** @param {{name: string, pieces: any[]}} props */
function Group({ name, pieces }) {
  if (!pieces.length) return null;
  return html`<section class="group" aria-label=${name}>
    <h2>${name} <small>${pieces.length}</small></h2>
    <ol class="rows">${pieces.map((piece) => html`<${PieceLine} piece=${piece} key=${piece.key} />`)}</ol>
  </section>`;
}

/** @param {{piece: any}} props */
function PieceLine({ piece }) {
  const words = [piece.state === "recut" ? "recut" : "", piece.left.shown, piece.right.shown].filter(Boolean).join(" · ");
  return html`<li>
    <a class="row" href=${link("pieces", piece.letter)}>
      <span class="ring ${piece.provisional ? "ring-provisional" : ""}">${piece.letter}</span>
      ${piece.provisional ? html`<span class="heard">letter not issued</span>` : null}
      <span class="row-words">
        <span>${piece.part_name}</span>
        <small>${words}</small>
        <${Drawing} svg=${piece.drawing} kind="small-piece" />
        ${piece.change ? html`<small class="wrong">${piece.change.message}</small>` : null}
        ${piece.flags.filter((flag) => flag.attention).map((flag) => html`<small class="flag" key=${flag.key}>${flag.message}</small>`)}
      </span>
      <span class="row-figure">
        <${Figure} shown=${piece.cut.shown} />
        <small>± ${plain(piece.plus_minus)}</small>
      </span>
    </a>
  </li>`;
}

/** What was issued and is not wanted any more. @param {{gone: any[]}} props */
function Gone({ gone }) {
  if (!gone.length) return null;
  return html`<section class="group" aria-label="No longer wanted">
    <h2>No longer wanted <small>${gone.length}</small></h2>
    <ul class="rows">
      ${gone.map(
        (one) => html`<li class="row" key=${one.id}>
        <span class="ring">${one.letter}</span>
        <span class="row-words"><span>${one.name}</span><small>${one.message}</small></span>
      </li>`,
      )}
    </ul>
  </section>`;
}

/** The list as it was issued, to mark boards by while the engine sleeps. */
function Sleeping() {
  const { entries, room, engine } = useNotebook();
  const issued = engine === "awake" ? [] : issuedIn(entries, room.id);
  if (!issued.length) return html`<${Asleep} what="The pieces" />`;
  return html`<section class="group" aria-label="As issued">
    <p class="pencil">As issued; what has changed since shows when the engine is awake.</p>
    <ol class="rows">${issued.map((one) => html`<${IssuedLine} piece=${one} key=${one.id} />`)}</ol>
  </section>`;
}

/** @param {{piece: import("../parts/listed.js").Issued}} props */
function IssuedLine({ piece }) {
  const { journal, act } = useNotebook();
  const mark = (/** @type {string} */ state) =>
    act(() => markPiece(journal, piece, state), `Piece ${piece.letter} ${state}`);
  const next = { "to cut": "cut", recut: "cut", cut: "fitted" }[piece.state];
  return html`<li class="row">
    <span class="ring">${piece.letter}</span>
    <span class="row-words"><span>${piece.part_name}</span>
      <small>${piece.doubted ? `${piece.state} · two pieces have this letter` : piece.state}</small></span>
    <${Figure} shown=${piece.shown} />
    ${next ? html`<${Button} label="Mark ${piece.letter} ${next}" onTouch=${() => mark(next)}>${next}<//>` : null}
  </li>`;
}

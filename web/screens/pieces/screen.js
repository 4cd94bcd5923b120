// @ts-check
// Pieces: every piece of wood that the room needs, by how it stands: what is to cut, what is cut, what is fitted.
import { html } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { Figure } from "../../controls/figure.js";
import { Refusal } from "../../controls/notes.js";
import { useWide } from "../../controls/wide.js";
import { Places } from "../../drawings/drawn.js";
import { Asleep, NoRoom } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { issuedIn, statesIn, stateWords } from "../../notebook/listed.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { markPiece } from "../../notebook/write.js";
import { say } from "../../words/words.js";
import { AsCut, InPlace, There } from "./at_piece.js";
import { Fit } from "./fit.js";
import { FreePiece } from "./free.js";
import { List } from "./list.js";
import { Labels, WallsOnSheets } from "./on_sheets.js";
import { Piece, PieceSheet } from "./piece.js";
import { AtSaw } from "./saw.js";

const AT_PIECE = { __proto__: null, "as-cut": AsCut, place: InPlace, there: There };

/** @param {{place: string[]}} props */
export function Pieces({ place: [letter, doing, more] }) {
  const { room, entries } = useNotebook();
  const wide = useWide();
  const isOne = letter && !["free", "saw", "labels", "walls", "fit"].includes(letter);
  const { answer: last, error, heard, older } = useAnswer(room ? { ask: "piece_rows", room: room.id } : null);
  const one = useAnswer(room && isOne ? { ask: "pieces", room: room.id, piece: letter } : null);
  const answer = older && last ? { ...last, rows: markedSince(last.rows, entries, room.id) } : last;
  if (!room) return html`<${Page} title=${say("screen-pieces")} tab="pieces"><${NoRoom} /><//>`;
  if (letter === "saw") return html`<${AtSaw} letter=${doing} doing=${more} />`;
  if (letter === "fit") return html`<${Fit} letter=${doing} />`;
  if (letter === "labels") return html`<${Labels} />`;
  if (letter === "walls") return html`<${WallsOnSheets} />`;
  if (letter === "free") return html`<${FreePiece} id=${doing} />`;
  const [found] = one.answer?.pieces ?? [];
  const piece = found && one.older ? { ...found, state: statesIn(entries).get(found.id) ?? found.state } : found;
  const At = AT_PIECE[/** @type {keyof AT_PIECE} */ (doing)];
  if (piece && At && (piece.id || At !== AsCut)) return html`<${At} piece=${piece} />`;
  if (piece && !wide) return html`<${Piece} piece=${piece} answer=${one.answer} older=${one.older} />`;
  const row = isOne && !one.error && answer?.rows.find((each) => each.letter === letter);
  const list = html`${heard ? null : html`<${Sleeping} />`}
    <${Refusal} error=${error} />
    ${answer ? html`<${List} answer=${answer} chosen=${letter} wide=${wide} />` : null}`;
  if (wide) {
    return html`<${Page} title=${say("pieces-title", { room: room.name })} tab="pieces" kind="pieces table" older=${older}>
      <div class="list">${list}</div>
      <div class="beside"><${Places} piece=${piece} /><section class="one-piece" aria-live="polite">
        ${piece || row ? html`<h2>${(piece ?? row).part_name}</h2>` : null}
        ${piece ? html`<${PieceSheet} piece=${piece} answer=${one.answer} beside key=${piece.key} />` : null}
      </section></div>
    <//>`;
  }
  if (row) return html`<${Coming} row=${row} />`;
  return html`<${Page} title=${say("pieces-title", { room: room.name })} tab="pieces" kind="pieces" older=${older}>${list}<//>`;
}

/**
 * What the list says of a piece, on the piece's own page, until the rest is heard. While the engine sleeps it can be marked
 * all the same. @param {{row: any}} props
 */
function Coming({ row }) {
  const { room, entries, engine } = useNotebook();
  const issued = engine === "awake" ? [] : issuedIn(entries, room.id).filter(({ letter }) => letter === row.letter);
  return html`<${Page} title=${row.part_name} tab="pieces" kind="one-piece">
    <div class="piece-head">
      <span class="ring ring-large ${row.provisional ? "ring-provisional" : ""}">${row.letter}</span>
      <p class="hero"><${Figure} shown=${row.cut} size="big" /></p>
    </div>
    ${engine === "awake" ? null : html`<${Asleep} what=${say("piece-asleep")} />`}
    <ol class="rows">${issued.map((one) => html`<${IssuedLine} piece=${one} key=${one.id} />`)}</ol>
  <//>`;
}

/**
 * The rows of the last time, as their pieces were marked since: what is marked while the engine sleeps must show.
 * @param {any[]} rows @param {any[]} entries @param {string} room
 */
function markedSince(rows, entries, room) {
  const sure = issuedIn(entries, room).filter(({ doubted }) => !doubted);
  const states = new Map(sure.map(({ letter, state }) => [letter, state]));
  return rows.map((row) => ({ ...row, state: states.get(row.letter) ?? row.state }));
}

/** The list as it was issued, to mark boards by while the engine sleeps. */
function Sleeping() {
  const { entries, room, engine } = useNotebook();
  const issued = engine === "awake" ? [] : issuedIn(entries, room.id);
  if (!issued.length) return html`<${Asleep} what=${say("pieces-asleep")} />`;
  return html`<section class="group" aria-label=${say("issued")}>
    <p class="pencil">${say("issued.hint")}</p>
    <ol class="rows">${issued.map((one) => html`<${IssuedLine} piece=${one} key=${one.id} />`)}</ol>
  </section>`;
}

/** @param {{piece: import("../../notebook/listed.js").Issued}} props */
function IssuedLine({ piece }) {
  const { journal, act } = useNotebook();
  const mark = (/** @type {string} */ state) =>
    act(() => markPiece(journal, piece, state), say(`piece-marked-${state}`, { letter: piece.letter }));
  const next = { "to cut": "cut", recut: "cut", cut: "fitted" }[piece.state];
  return html`<li class="row">
    <span class="ring">${piece.letter}</span>
    <span class="row-words"><span>${piece.part_name}</span>
      <small>${piece.doubted ? say("issued.doubted", { state: stateWords(piece.state) }) : stateWords(piece.state)}</small></span>
    <${Figure} shown=${piece.shown} />
    ${next ? html`<${Button} label=${say(`issued-mark-${next}`, { letter: piece.letter })} onTouch=${() => mark(next)}>${stateWords(next)}<//>` : null}
  </li>`;
}

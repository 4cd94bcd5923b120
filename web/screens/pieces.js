// @ts-check
// Pieces: every piece of wood that the room needs, in fitting order; a piece opens the working behind its figure.
import { html } from "../parts/ui.js";
import { Button } from "../parts/controls.js";
import { Drawing } from "../parts/drawing.js";
import { PieceDrawn, Places } from "../parts/drawn.js";
import { Figure } from "../parts/figure.js";
import { Cautions, Problems, Refusal } from "../parts/notes.js";
import { useAnswer, useNotebook } from "../parts/notebook.js";
import { Page } from "../parts/page.js";
import { go, link } from "../parts/route.js";
import { Asleep, NoRoom } from "../parts/empty.js";
import { FreePiece } from "./free.js";

/** @param {{place: string[]}} props */
export function Pieces({ place: [letter, own] }) {
  const { room } = useNotebook();
  const { answer, error, heard } = useAnswer(room ? { ask: "pieces", room: room.id } : null);
  if (!room) return html`<${Page} title="Pieces" tab="pieces"><${NoRoom} /><//>`;
  if (letter === "free") return html`<${FreePiece} id=${own} />`;
  if (letter) {
    const piece = answer?.pieces.find((one) => one.letter === letter);
    if (piece) return html`<${Piece} piece=${piece} cautions=${answer.cautions} />`;
  }
  return html`<${Page} title=${`Pieces: ${room.name}`} tab="pieces" kind="pieces">
    ${heard ? null : html`<${Asleep} what="The pieces" />`}
    <${Refusal} error=${error} />
    ${answer ? html`<${List} answer=${answer} />` : null}
  <//>`;
}

/** @param {{answer: any}} props */
function List({ answer }) {
  const { pieces, problems, warnings, cautions } = answer;
  return html`
    <${Problems} problems=${[...problems, ...warnings.map((message) => ({ key: message, message }))]} />
    ${
      pieces.length
        ? html`<ol class="rows">${pieces.map((piece) => html`<${PieceLine} piece=${piece} key=${piece.letter} />`)}</ol>`
        : html`<div class="now">
            <h2>No pieces yet</h2>
            <p class="pencil">A piece appears once its wall and both its corners are read.</p>
            <p class="onward"><a href=${link("survey")}>To the readings</a></p>
          </div>`
    }
    <p class="onward"><a href=${link("pieces", "free", "new")}>Add a piece of your own</a></p>
    ${pieces.length ? html`<${Places} />` : null}
    <${Cautions} cautions=${cautions} />`;
}

/** @param {{piece: any}} props */
function PieceLine({ piece }) {
  return html`<li>
    <a class="row" href=${link("pieces", piece.letter)}>
      <span class="ring">${piece.letter}</span>
      <span class="row-words">
        <span>${piece.part_name}</span>
        <small>${piece.left.shown} · ${piece.right.shown}</small>
        <${Drawing} svg=${piece.drawing} kind="small-piece" />
        ${piece.flags.filter((flag) => flag.attention).map((flag) => html`<small class="flag" key=${flag.key}>${flag.message}</small>`)}
      </span>
      <span class="row-figure">
        <${Figure} shown=${piece.cut.shown} />
        <small>± ${plain(piece.plus_minus)}</small>
      </span>
    </a>
  </li>`;
}

/** A length inside running text: 1/32, not 1/32". @param {any} length */
function plain(length) {
  return length.shown.replace('"', "");
}

/** @param {{piece: any, cautions: string[]}} props */
function Piece({ piece, cautions }) {
  return html`<${Page} title=${piece.part_name} aside=${piece.profile} tab="pieces" kind="one-piece">
    <div class="piece-head">
      <span class="ring ring-large">${piece.letter}</span>
      <p class="hero"><${Figure} shown=${piece.cut.shown} size="big" /></p>
    </div>
    <p class="said-of">${piece.cut_from}, ± ${plain(piece.plus_minus)} in</p>
    <dl class="faces">
      <${Face} name="along the face" length=${piece.front} cut=${piece.cut} />
      <${Face} name="along the back" length=${piece.back} cut=${piece.cut} />
    </dl>
    <${PieceDrawn} piece=${piece} />
    <div class="ends"><${End} side="left" end=${piece.left} /><${End} side="right" end=${piece.right} /></div>
    ${piece.flags.map((flag) => html`<p class="flag" key=${flag.key}>${flag.message}</p>`)}
    <h2>Why</h2>
    <ul class="rows working">${piece.working.map((step, place) => html`<${Step} step=${step} key=${place} />`)}</ul>
    <${Cautions} cautions=${cautions} />
    ${piece.key.startsWith("free ") ? html`<p class="onward"><a href=${link("pieces", "free", piece.key.split(" ")[1])}>Change or strike this piece</a></p>` : null}
    <div class="low last-row"><${Button} onTouch=${() => go("pieces")}>Back<//></div>
  <//>`;
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
  const settings = [
    `saw ${end.saw_shown} from square`,
    `point of the board ${end.point_shown}`,
    `long point at the ${end.long_edge}`,
  ];
  return html`<div class="end end-${side}"><b>${side}: ${end.shown}</b>
    ${end.saw_shown !== "0°" ? settings.map((words) => html`<small key=${words}>${words}</small>`) : null}
    <small>meets ${end.meets}</small></div>`;
}

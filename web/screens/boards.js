// @ts-check
// Boards: what to buy, what it comes to, the proof, and which piece comes from which board.
import { html } from "../parts/ui.js";
import { Drawing } from "../parts/drawing.js";
import { Asleep, NoRoom } from "../parts/empty.js";
import { Cautions, Problems, Refusal } from "../parts/notes.js";
import { useAnswer, useNotebook } from "../parts/notebook.js";
import { Page } from "../parts/page.js";
import { link } from "../parts/route.js";

export function Boards() {
  const { room } = useNotebook();
  const { answer, error, heard } = useAnswer(room ? { ask: "boards_for_room", room: room.id } : null);
  if (!room) return html`<${Page} title="Boards" tab="boards"><${NoRoom} /><//>`;
  return html`<${Page} title=${`Boards: ${room.name}`} tab="boards" kind="boards">
    ${heard ? null : html`<${Asleep} what="The boards" />`}
    <${Refusal} error=${error} />
    ${
      answer
        ? html`
      ${answer.plans.map((plan) => html`<${Plan} plan=${plan} key=${plan.profile} />`)}
      <${Problems} problems=${answer.problems} />
      ${answer.missing.length || !answer.plans.length ? html`<${Missing} missing=${answer.missing} />` : null}
      <${Cautions} cautions=${answer.cautions} />`
        : null
    }
  <//>`;
}

/** What a plan still needs, and where to give it. @param {{missing: string[]}} props */
function Missing({ missing }) {
  return html`<div class="now"><h2>Still missing</h2>
    ${missing.map((words) => html`<p key=${words}>${words}</p>`)}
    <p class="onward">
      <a href=${link("pieces")}>See the pieces</a>
      <a href=${link("house", "standard")}>Set lengths and prices</a>
    </p>
  </div>`;
}

/** @param {{plan: any}} props */
function Plan({ plan }) {
  return html`<section class="plan-of-boards" aria-label=${plan.profile}>
    <h2>${plan.profile}</h2>
    <p class="money">$${plan.cost}</p>
    <p>${plan.summary}</p>
    <p class="pencil">${plan.proof}</p>
    <${Drawing} svg=${plan.drawing} label="Boards of ${plan.profile}, listed below" kind="boards-drawn" />
    ${
      plan.unsafe.length
        ? html`<p class="wrong">Too short to hold at the end of a board: ${plan.unsafe.join(", ")}.
          Cut from a longer offcut, or by hand.</p>`
        : null
    }
    <details class="more">
      <summary>The same as a list</summary>
      <ol class="rows">
        ${plan.boards.map((board, place) => html`<${BoardLine} board=${board} key=${place} />`)}
      </ol>
    </details>
  </section>`;
}

/** @param {{board: any}} props */
function BoardLine({ board }) {
  const marks = board.pieces.map((piece) => `${piece.letter} ends at ${piece.mark.shown}`);
  return html`<li class="row">
    <span class="row-words"><span>${board.length.shown}</span><small>${marks.join(", ")}</small></span>
    <small>${board.offcut.shown} left</small>
  </li>`;
}

// @ts-check
// A plan of one profile's boards: what to buy, its proof, which piece comes from which board, and settling on it.
import { html, useState } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { Drawing } from "../../drawings/drawing.js";
import { useNotebook } from "../../notebook/notebook.js";
import { acceptPlan } from "../../notebook/write.js";

/** @param {{plan: any, look: any, children?: any}} props what stands below the plan */
export function Plan({ plan, look, children = null }) {
  return html`<section class="plan-of-boards" aria-label=${plan.profile}>
    <h2>${plan.profile}</h2>
    <div>
      <p class="money">$${plan.total}</p>
      <p>${plan.summary}</p>
      <p class="pencil">${plan.proof}</p>
      ${plan.slack ? html`<p class="pencil">${plan.slack}</p>` : null}
      ${plan.reasons.length ? html`<${Changed} reasons=${plan.reasons} />` : null}
      <${ToBuy} plan=${plan} />
    </div>
    <div>
      <${Drawing} svg=${plan.drawing} label="Boards of ${plan.profile}, listed below" kind="boards-drawn" />
      ${plan.blanks.map((blank) => html`<p class="wrong" key=${blank.letter}>${blank.message}</p>`)}
      <${Settle} plan=${plan} look=${look} />
      <${BoardList} plan=${plan} />
      ${children}
    </div>
  </section>`;
}

/** Why the plan that was accepted is not shown. @param {{reasons: string[]}} props */
function Changed({ reasons }) {
  return html`<div class="wrong"><p>Readings changed since the plan was accepted, so this one is new:</p>
    ${reasons.map((words) => html`<p key=${words}>${words}</p>`)}
    <p>What is cut and what is bought stays as it is.</p></div>`;
}

/** @param {{plan: any}} props */
function ToBuy({ plan }) {
  if (!plan.buy.length) return html`<p>Nothing to buy: all of it is here.</p>`;
  return html`<table class="to-buy">
    <caption>To buy</caption>
    <tbody>${plan.buy.map((line, place) => html`<${BuyLine} line=${line} key=${place} />`)}</tbody>
    <tfoot><tr><th scope="row">Together</th><td></td><td>$${plan.total}</td></tr></tfoot>
  </table>`;
}

/** @param {{line: any}} props */
function BuyLine({ line }) {
  return html`<tr>
    <th scope="row">${line.count} of ${line.length} ${line.why ? html`<small>${line.why}</small>` : null}</th>
    <td>at $${line.each}</td><td>$${line.cost}</td>
  </tr>`;
}

/** Accepting a plan, or looking longer for a cheaper one. @param {{plan: any, look: any}} props */
function Settle({ plan, look }) {
  const { journal, act } = useNotebook();
  if (plan.accepted || !plan.accept) return null;
  const accept = () => act(() => acceptPlan(journal, plan.accept), `The plan for ${plan.profile} is accepted.`);
  return html`<div class="settle">
    ${plan.proven ? null : html`<${Look} look=${look} />`}
    <${Button} kind="main" onTouch=${accept} next="shown on every device from then on">Accept this plan<//>
  </div>`;
}

/** @param {{look: any}} props */
function Look({ look }) {
  if (look.looking) {
    return html`<p role="status">Looking longer; you can go on meanwhile.</p>
      <${Button} onTouch=${look.stop} key="stop">Stop looking<//>`;
  }
  if (look.found) return html`<p role="status">This is the best that was found in a longer look.</p>`;
  return html`${look.trouble ? html`<p class="wrong" role="status">${look.trouble}</p>` : null}
    <${Button} onTouch=${look.start} next="in the background, a minute at most" key="look">Look longer<//>`;
}

/** The drawing as a list, and which boards are bought. @param {{plan: any}} props */
function BoardList({ plan }) {
  return html`<details class="more" open=${plan.accepted}>
    <summary>Board by board</summary>
    <ol class="rows">
      ${plan.boards.map((board, place) => html`<${BoardLine} plan=${plan} board=${board} place=${place} key=${place} />`)}
    </ol>
  </details>`;
}

/** @param {{plan: any, board: any, place: number}} props */
function BoardLine({ plan, board, place }) {
  const { journal, act } = useNotebook();
  const [busy, setBusy] = useState(false);
  const buy = async () => {
    setBusy(true);
    await act(() => acceptPlan(journal, plan.accept, new Map([[place, !board.bought]])),
      board.bought ? "Not bought after all." : "Bought.");
    setBusy(false);
  };
  return html`<li class="row">
    <span class="row-words"><span>${board.length_shown} ${board.why ? html`<small>${board.why}</small>` : null}</span>
      <small>${board.pieces.map(sayPiece).join(", ")}</small>
      <small>${board.offcut.shown} left</small></span>
    ${
      plan.accepted && plan.accept
        ? html`<${Button} pressed=${board.bought} disabled=${busy} onTouch=${buy}
            label="Board ${place + 1} of ${board.length_shown}: bought">${board.bought ? "bought" : "to buy"}<//>`
        : null
    }
  </li>`;
}

/** @param {any} piece */
function sayPiece(piece) {
  if (piece.state !== "to cut") return `${piece.letter} ${piece.state}`;
  const shares = piece.shares_cut ? " (its left end is the cut before)" : "";
  const last = piece.uncertain ? " (last: it may still change)" : "";
  return `${piece.letter} ends at ${piece.mark.shown}${shares}${last}`;
}

// @ts-check
// A plan of one profile's boards: what to buy, its proof, which piece comes from which board, and settling on it.
import { html, useState } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { Drawing } from "../../drawings/drawing.js";
import { stateWords } from "../../notebook/listed.js";
import { useNotebook } from "../../notebook/notebook.js";
import { acceptPlan } from "../../notebook/write.js";
import { say, sayWith } from "../../words/words.js";

/** @param {{plan: any, look: any, children?: any}} props what stands below the plan */
export function Plan({ plan, look, children = null }) {
  return html`<section class="plan-of-boards" aria-label=${plan.profile_shown}>
    <div class="bought-for">
      <h2>${plan.profile_shown}</h2>
      <p class="money">${say("dollars", { amount: plan.total })}</p>
      <p>${plan.summary}</p>
      <p class="pencil">${plan.proof}</p>
      ${plan.slack ? html`<p class="pencil">${plan.slack}</p>` : null}
      ${plan.reasons.length ? html`<${Changed} reasons=${plan.reasons} />` : null}
      <${ToBuy} plan=${plan} />
    </div>
    <div>
      <div class="boards-drawn" role="img" aria-label=${say("boards-drawn", { profile: plan.profile_shown })}>
        ${plan.boards.map((board, place) => html`<${Drawing} svg=${board.drawing} key=${place} />`)}
      </div>
      ${plan.blanks.map((blank) => html`<p class="wrong" key=${blank.letter}>${blank.message}</p>`)}
      <${Settle} plan=${plan} look=${look} />
      <${BoardList} plan=${plan} />
      ${children}
    </div>
  </section>`;
}

/** Why the plan that was accepted is not shown. @param {{reasons: string[]}} props */
function Changed({ reasons }) {
  return html`<div class="wrong"><p>${say("boards-changed")}</p>
    ${reasons.map((words) => html`<p key=${words}>${words}</p>`)}
    <p>${say("boards-changed.stays")}</p></div>`;
}

/** @param {{plan: any}} props */
function ToBuy({ plan }) {
  if (!plan.buy.length) return html`<p>${say("boards-buy.none")}</p>`;
  return html`<table class="to-buy">
    <caption>${say("boards-buy")}</caption>
    <tbody>${plan.buy.map((line, place) => html`<${BuyLine} line=${line} key=${place} />`)}</tbody>
    <tfoot><tr><th scope="row">${say("boards-buy.together")}</th><td></td><td>${say("dollars", { amount: plan.total })}</td></tr></tfoot>
  </table>`;
}

/** @param {{line: any}} props */
function BuyLine({ line }) {
  return html`<tr>
    <th scope="row">${say("count-of", { count: String(line.count), what: line.length })} ${line.why ? html`<small>${line.why}</small>` : null}</th>
    <td>${say("dollars.each", { amount: line.each })}</td><td>${say("dollars", { amount: line.cost })}</td>
  </tr>`;
}

/** Accepting a plan, or looking longer for a cheaper one. @param {{plan: any, look: any}} props */
function Settle({ plan, look }) {
  const { journal, act } = useNotebook();
  if (plan.accepted || !plan.accept) return null;
  const accept = () => act(() => acceptPlan(journal, plan.accept), say("boards-accept.done", { profile: plan.profile_shown }));
  return html`<div class="settle">
    ${plan.proven ? null : html`<${Look} look=${look} />`}
    <${Button} kind="main" onTouch=${accept} next=${say("boards-accept.next")}>${say("boards-accept")}<//>
  </div>`;
}

/** @param {{look: any}} props */
function Look({ look }) {
  if (look.looking) {
    return html`<p role="status">${say("boards-looking")}</p>
      <${Button} onTouch=${look.stop} key="stop">${say("boards-looking.stop")}<//>`;
  }
  if (look.found) return html`<p role="status">${say("boards-look.found")}</p>`;
  return html`${look.trouble ? html`<p class="wrong" role="status">${look.trouble}</p>` : null}
    <${Button} onTouch=${look.start} next=${say("boards-look.next")} key="look">${say("boards-look")}<//>`;
}

/** The drawing as a list, and which boards are bought. @param {{plan: any}} props */
function BoardList({ plan }) {
  return html`<details class="more" open=${plan.accepted}>
    <summary>${say("boards-list")}</summary>
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
      say(board.bought ? "boards-bought.not" : "boards-bought"));
    setBusy(false);
  };
  return html`<li class="row">
    <span class="row-words"><span>${board.length_shown} ${board.why ? html`<small>${board.why}</small>` : null}</span>
      <small>${board.pieces.map(pieceWords).join(", ")}</small>
      <small>${say("boards-left", { length: board.offcut.shown })}</small></span>
    ${
      plan.accepted && plan.accept
        ? html`<${Button} pressed=${board.bought} disabled=${busy} onTouch=${buy}
            label=${say("boards-bought.what", { board: String(place + 1), length: board.length_shown })}>${say(board.bought ? "tick-bought" : "tick-to-buy")}<//>`
        : null
    }
  </li>`;
}

/** @param {any} piece */
function pieceWords({ letter, state, mark, shares_cut: shares, uncertain }) {
  if (state !== "to cut") return say("boards-piece.stands", { letter, state: stateWords(state) });
  const facts = { letter, length: mark.shown };
  if (shares && uncertain) return say("boards-piece.shares-last", facts);
  if (shares) return say("boards-piece.shares", facts);
  return uncertain ? say("boards-piece.last", facts) : say("boards-piece", facts);
}

/** What all profiles come to. @param {{total: string}} props */
export function AllTogether({ total }) {
  const sum = html`<b>${say("dollars", { amount: total })}</b>`;
  return html`<p class="all-profiles">${sayWith("boards-all", { sum })}</p>`;
}

// @ts-check
// Fitting: one piece in hand after the other, in the order that they go up. It is marked fitted, or told to want a hair
// off or more; the engine says what that is and which pieces go with it, and only then a touch writes it.
import { html, useState } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { Figure } from "../../controls/figure.js";
import { Refusal } from "../../controls/notes.js";
import { go, goInstead, link, stayHere } from "../../controls/route.js";
import { useLight } from "../../controls/wake.js";
import { Places, useDrawn } from "../../drawings/drawn.js";
import { Drawing } from "../../drawings/drawing.js";
import { Asleep } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { markPiece, writeTold } from "../../notebook/write.js";
import { say, sayWith } from "../../words/words.js";
import { Step } from "./piece.js";

/** @param {{letter?: string}} props the piece in hand, or the first that is left */
export function Fit({ letter }) {
  const { room } = useNotebook();
  const { answer, error, heard, older } = useAnswer({ ask: "fit", room: room.id });
  useLight();
  const { left = [], fitted = [] } = answer ?? {};
  const at = Math.max(0, left.findIndex((/** @type {any} */ one) => one.letter === letter));
  const piece = left[at];
  return html`<${Page} title=${say("fit")} aside=${answer?.words ?? ""} tab="pieces" kind="one-piece fit" older=${older}
    view=${html`<${Places} piece=${piece} />`}>
    ${heard ? null : html`<${Asleep} what=${say("fit.asleep")} />`}
    <${Refusal} error=${error} />
    ${piece ? html`<section class="now-up"><${InHand} piece=${piece} next=${left[at + 1] ?? left[0]} hairs=${answer.hairs} key=${piece.key} /></section>` : null}
    ${answer && !piece ? html`<div class="low now"><h2>${answer.words}</h2>
      <p class="onward"><a href=${link("pieces")}>${say("pieces-way")}</a></p></div>` : null}
    ${left.length > 1 ? html`<${Order} name=${say("fit.left")} rows=${left} chosen=${piece.letter} />` : null}
    ${fitted.length ? html`<details class="more"><summary><b>${say("pieces-fitted")}</b> <small>${fitted.length}</small></summary>
      <${Order} name=${say("pieces-fitted")} rows=${fitted} /></details>` : null}
  <//>`;
}

/** @param {{piece: any, next: any, hairs: any[]}} props */
function InHand({ piece, next, hairs }) {
  const { journal, act } = useNotebook();
  const [hair, setHair] = useState(/** @type {any} */ (null));
  const drawn = useDrawn(piece);
  const { letter } = piece;
  const onward = () => goInstead("pieces", "fit", ...(next === piece ? [] : [next.letter]));
  const fitted = async () => {
    const stays = stayHere();
    const done = await act(() => markPiece(journal, piece, "fitted"), say("piece-marked-fitted", { letter }));
    if (done && stays()) onward();
  };
  const then = next === piece ? say("piece-last") : say("fit-next", { letter: next.letter });
  const isUp = piece.state === "cut" || piece.salvaged;
  return html`<div class="piece-head">
      <span class="ring ring-large ${piece.id ? "" : "ring-provisional"}">${piece.letter}</span>
      <p class="hero"><${Figure} shown=${piece.shown} size="big" /></p>
    </div>
    <p class="stands">${piece.part_name}, ${piece.standing}</p>
    ${piece.change ? html`<p class="wrong" role="status">${piece.change}</p>` : null}
    ${drawn ? html`<${Drawing} svg=${drawn.hanging} kind="large-piece" label=${say("fit-hangs", { letter })} />` : null}
    ${piece.id && !piece.salvaged ? html`<div class="hairs" role="group" aria-label=${say("fit-hairs", { letter })}>
      <p class="pencil" aria-hidden="true">${say("fit-hairs", { letter })}</p>
      ${hairs.map((one) => html`<${Button} pressed=${one === hair} onTouch=${() => setHair(one === hair ? null : one)} key=${one.words}>${one.words}<//>`)}
    </div>` : null}
    ${hair ? html`<${Hair} piece=${piece} hair=${hair} done=${() => setHair(null)} />` : null}
    <div class="doing">
      ${piece.id ? null : html`<p class="pencil">${say("fit.issue")}</p>`}
      <div class="last-row">
        <${Button} onTouch=${() => go("pieces")}>${say("pieces-list")}<//>
        <${Button} onTouch=${onward}>${say("piece-later")}<//>
        ${piece.id && isUp ? html`<${Button} kind="main" onTouch=${fitted} next=${then}>${say("pieces-fitted")}<//>` : null}
        ${piece.id && !isUp ? html`<${Button} kind="main" onTouch=${() => go("pieces", "saw", piece.letter)}>${say("saw")}<//>` : null}
      </div>
    </div>`;
}

/** What a hair would come to, told before it is written. @param {{piece: any, hair: any, done: () => void}} props */
function Hair({ piece, hair, done }) {
  const { room, journal, act } = useNotebook();
  const { by, way } = hair;
  const { answer, error } = useAnswer({ ask: "hair", room: room.id, piece: piece.key, by, way });
  const save = async () => {
    const saved = await act(() => writeTold(journal, answer.entries), answer.words);
    if (saved) done();
  };
  if (!answer) return html`<${Refusal} error=${error} />`;
  return html`<section class="group" aria-label=${say("fit-hair")}>
    <p role="status"><b><${Figure} shown=${answer.length.shown} /></b> ${answer.words}</p>
    <ul class="rows working">${answer.working.map((/** @type {any} */ step, /** @type {number} */ place) => html`<${Step} step=${step} key=${place} />`)}</ul>
    <p>${answer.neighbours}</p>
    <ul class="rows">${answer.moved.map((/** @type {any} */ one) => html`<${Moved} one=${one} key=${one.letter} />`)}</ul>
    <${Button} onTouch=${save} next=${piece.part_name}>${say("fit-hair.write", { hair: hair.words })}<//>
  </section>`;
}

/** A neighbour that goes with it, and why. @param {{one: any}} props */
function Moved({ one }) {
  const rest = html`<span class="heard">${say("fit-moved.rest", { letter: one.letter })}</span>`;
  return html`<li>
    <div class="row"><span class="ring">${one.letter}</span>
      <span class="row-words"><span>${one.part_name}</span><small>${one.message || say("fit-moved", { length: one.before.shown })}</small></span>
      <${Figure} shown=${one.after.shown} /></div>
    <details class="more"><summary>${sayWith("fit-moved.why", { rest })}</summary>
      <ul class="rows working">${one.working.map((/** @type {any} */ step, /** @type {number} */ place) => html`<${Step} step=${step} key=${place} />`)}</ul></details>
  </li>`;
}

/** @param {{name: string, rows: any[], chosen?: string}} props */
function Order({ name, rows, chosen }) {
  return html`<section class="group" aria-label=${name}>
    ${chosen ? html`<h2>${name} <small>${rows.length}</small></h2>` : null}
    <ol class="rows">${rows.map((row) => html`<li data-letters=${row.letter} key=${row.key}>
      <a class="row" href=${chosen ? link("pieces", "fit", row.letter) : link("pieces", row.letter)} aria-current=${row.letter === chosen ? "step" : null}>
        <span class="ring ${row.id ? "" : "ring-provisional"}">${row.letter}</span>
        <span class="row-words"><span>${row.part_name}</span><small>${row.standing}</small>
          ${row.change ? html`<small class="wrong">${row.change}</small>` : null}</span>
        <${Figure} shown=${row.shown} />
      </a>
    </li>`)}</ol>
  </section>`;
}

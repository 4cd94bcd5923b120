// @ts-check
// At the saw: one piece fills the screen at arm's length, and nothing below it is needed to cut. What comes next goes by
// board or by how the saw stands, as the engine orders it.
import { html, useEffect, useState } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { Figure, inWords } from "../../controls/figure.js";
import { Refusal } from "../../controls/notes.js";
import { go, goInstead, link, stayHere } from "../../controls/route.js";
import { recall, remember } from "../../controls/scrap.js";
import { useLight } from "../../controls/wake.js";
import { Drawing } from "../../drawings/drawing.js";
import { Asleep } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { statesIn, stateWords } from "../../notebook/listed.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { markPiece } from "../../notebook/write.js";
import { say, sayWith } from "../../words/words.js";
import { AsCut } from "./at_piece.js";
import { Issue } from "./issue.js";
import { Spoiled, TestCuts } from "./scraps.js";

const ORDER = "scantling saw order";

/** @param {{letter?: string, doing?: string}} props the piece in hand, or the first */
export function AtSaw({ letter, doing }) {
  const { room, entries } = useNotebook();
  const [order, setOrder] = useState(() => recall(ORDER) ?? "board");
  const { answer, error, heard, older } = useAnswer({ ask: "saw", room: room.id, order });
  useLight();
  useEffect(() => () => globalThis.speechSynthesis?.cancel(), []);
  const choose = (/** @type {string} */ key) => {
    remember(ORDER, key);
    setOrder(key);
  };
  const states = older ? statesIn(entries) : new Map();
  const left = (answer?.pieces ?? []).filter((one) => !["cut", "fitted"].includes(states.get(one.id)));
  const at = Math.max(0, left.findIndex((one) => one.letter === letter));
  const piece = left[at];
  if (piece && doing === "as-cut") return html`<${AsCut} piece=${piece} back=${["pieces", "saw"]} />`;
  if (piece && doing === "spoiled") return html`<${Spoiled} piece=${piece} />`;
  if (piece && doing === "test-cuts") return html`<${TestCuts} piece=${piece} />`;
  return html`<${Page} title=${say("saw")} aside=${piece?.board ?? ""} kind="saw" older=${older}>
    ${heard ? null : html`<${Asleep} what=${say("saw.asleep")} />`}
    <${Refusal} error=${error} />
    ${piece ? html`<${InHand} ...${{ piece, answer, order, choose }} next=${left[at + 1] ?? left[0]} key=${piece.key} />` : null}
    ${answer && !piece ? html`<div class="low now"><h2>${say("saw.none")}</h2>
      <p class="onward"><a href=${link("pieces")}>${say("pieces-way")}</a></p></div>` : null}
  <//>`;
}

/** @param {{piece: any, next: any, answer: any, order: string, choose: (key: string) => void}} props */
function InHand({ piece, next, answer, order, choose }) {
  const { journal, act } = useNotebook();
  const { part_name: part, profile_shown: profile } = piece;
  const then = next === piece ? say("piece-last") : say("saw-cut.next", { letter: next.letter, board: next.board });
  const recut = html`<b>${stateWords("recut")}</b>`;
  const onward = () => goInstead("pieces", "saw", ...(next === piece ? [] : [next.letter]));
  const cut = async () => {
    const stays = stayHere();
    const done = await act(() => markPiece(journal, piece, "cut"), say("piece-marked-cut", { letter: piece.letter }));
    if (done && stays()) onward();
  };
  return html`<div class="piece-head">
      <span class="ring ring-large ${piece.provisional ? "ring-provisional" : ""}">${piece.letter}</span>
      <p class="hero"><${Figure} shown=${piece.cut} size="big" /></p>
    </div>
    <p class="said-of">${say("piece-cut-from", { edge: piece.cut_from, length: inWords(piece.plus_minus) })}${
      piece.other ? html`<small>${piece.other}</small>` : null}</p>
    <p class="stands">${piece.state === "recut" ? sayWith("saw-of.recut", { recut }, { part, profile }) : say("saw-of", { part, profile })}</p>
    ${piece.tried?.length ? html`<${Tried} piece=${piece} />` : null}
    <${Drawing} svg=${piece.drawing} label=${piece.spoken} kind="at-saw" />
    ${piece.notes.length ? html`<ul class="saw-notes">${piece.notes.map((words) => html`<li class="flag" key=${words}>${words}</li>`)}</ul>` : null}
    <div class="low gloved">
      ${piece.provisional ? html`<${Issue} answer=${answer} />` : html`<${Button} kind="main" onTouch=${cut}
        next=${then}>${say("saw-cut")}<//>`}
      <div class="last-row">
        ${piece.provisional ? null : html`<${Button} onTouch=${() => go("pieces", "saw", piece.letter, "as-cut")}>${say("saw-cut.at")}<//>`}
        <${Read} words=${piece.spoken} />
        <${Button} onTouch=${onward}>${say("piece-later")}<//>
      </div>
      <div class="last-row orders">
        ${answer.orders.map((one) => html`<${Button} pressed=${one.key === order} onTouch=${() => choose(one.key)} key=${one.key}>${one.words}<//>`)}
        ${piece.provisional ? null : html`<${Button} onTouch=${() => go("pieces", "saw", piece.letter, "spoiled")}>${say("saw-spoiled")}<//>`}
        <${Button} onTouch=${() => go("pieces")}>${say("pieces-list")}<//>
      </div>
    </div>`;
}

/** What scraps showed in its corners, to be noted or noted anew. @param {{piece: any}} props */
function Tried({ piece }) {
  const noted = piece.tried.filter((/** @type {any} */ one) => one.text);
  const ends = noted.map((/** @type {any} */ one) => say(`tried-end-${one.side}`, { text: one.text }));
  return html`<p class="onward tried"><a href=${link("pieces", "saw", piece.letter, "test-cuts")}>
    ${ends.length ? say("piece-tried", { what: ends.join("; ") }) : say("tried-note")}</a></p>`;
}

/** Reads aloud, where the system has a voice. @param {{words: string}} props */
function Read({ words }) {
  if (!globalThis.speechSynthesis) return null;
  const speak = () => {
    speechSynthesis.cancel();
    speechSynthesis.speak(new SpeechSynthesisUtterance(words));
  };
  return html`<${Button} onTouch=${speak}>${say("saw-read")}<//>`;
}

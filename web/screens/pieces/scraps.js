// @ts-check
// Scraps: what two of them showed in a corner before a board was cut to it; and a piece that was spoiled at the saw.
import { html, useState } from "../../controls/ui.js";
import { Button, Field } from "../../controls/controls.js";
import { go, goInstead, stayHere } from "../../controls/route.js";
import { Places } from "../../drawings/drawn.js";
import { Asleep } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useLengths, useNotebook } from "../../notebook/notebook.js";
import { asWritten, noteTestCut, writeTold } from "../../notebook/write.js";
import { say } from "../../words/words.js";
import { Step } from "./piece.js";

/** The piece comes back to be cut again: what that uses up is told before it is written. @param {{piece: any}} props */
export function Spoiled({ piece }) {
  const { room, journal, act } = useNotebook();
  const [text, setText] = useState("");
  const left = asWritten(text.trim(), useLengths()) || null;
  const { answer, error, heard } = useAnswer({ ask: "spoiled", room: room.id, piece: piece.key, left });
  const save = async () => {
    const stays = stayHere();
    const saved = await act(() => writeTold(journal, answer.entries), answer.words);
    if (saved && stays()) goInstead("pieces", "saw", piece.letter);
  };
  return html`<${Page} title=${say("spoiled", { letter: piece.letter })} aside=${piece.part_name} kind="form"
    view=${html`<${Places} piece=${piece} />`}>
    ${heard ? null : html`<${Asleep} what=${say("spoiled.asleep")} one />`}
    ${answer ? html`<section role="status">
        <p><b>${answer.board}</b></p><p>${answer.left}</p><p>${answer.cost}</p><p>${answer.words}</p>
      </section>
      <details class="more"><summary>${say("working")}</summary>
        <ul class="rows working">${answer.working.map((/** @type {any} */ step, /** @type {number} */ place) => html`<${Step} step=${step} key=${place} />`)}</ul></details>` : null}
    <div class="low now">
      <${Field} label=${say("spoiled-left")} value=${text} onInput=${setText} wrong=${error?.message}
        hint=${say("spoiled-left.hint")} />
      <div class="last-row">
        <${Button} onTouch=${() => go("pieces", "saw", piece.letter)}>${say("back")}<//>
        <${Button} kind="main" disabled=${!answer || Boolean(error)} onTouch=${save} next=${say("spoiled-again.next")}>${say("spoiled-again")}<//>
      </div>
    </div>
  <//>`;
}

/** A note to each corner that the piece is cut to. @param {{piece: any}} props */
export function TestCuts({ piece }) {
  return html`<${Page} title=${say("tried")} aside=${piece.part_name} kind="form" view=${html`<${Places} piece=${piece} />`}>
    <p class="pencil">${say("tried.hint")}</p>
    ${piece.tried.map((/** @type {any} */ one) => html`<${TestCut} one=${one} key=${`${one.of} ${one.what}`} />`)}
    <div class="low last-row"><${Button} onTouch=${() => go("pieces", "saw", piece.letter)}>${say("back")}<//></div>
  <//>`;
}

/** @param {{one: any}} props */
function TestCut({ one }) {
  const { journal, act } = useNotebook();
  const [text, setText] = useState(one.text);
  const name = say(`tried-at-${one.side}`, { corner: one.name });
  const isSaved = text.trim() === one.text;
  const said = say("named", { name, text: text.trim() || say("tried-none") });
  const save = () => act(() => noteTestCut(journal, one, text.trim()), said);
  return html`<div class="setting">
    <${Field} label=${say("tried-showed", { name })} value=${text} onInput=${setText} onEnter=${isSaved ? undefined : save}
      hint=${say("tried-showed.hint")} wrong=${text.trim().length > 200 ? say("tried-showed.long") : ""} />
    <${Button} disabled=${isSaved || text.trim().length > 200} onTouch=${save}>${say(isSaved && text ? "saved" : "save")}<//>
  </div>`;
}

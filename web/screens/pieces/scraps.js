// @ts-check
// Scraps: what two of them showed in a corner before a board was cut to it; and a piece that was spoiled at the saw.
import { html, useState } from "../../controls/ui.js";
import { Button, Field } from "../../controls/controls.js";
import { go, goInstead, stayHere } from "../../controls/route.js";
import { Asleep } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { noteTestCut, writeTold } from "../../notebook/write.js";
import { Step } from "./piece.js";

/** The piece comes back to be cut again: what that uses up is told before it is written. @param {{piece: any}} props */
export function Spoiled({ piece }) {
  const { room, journal, act } = useNotebook();
  const [text, setText] = useState("");
  const left = text.trim() || null;
  const { answer, error, heard } = useAnswer({ ask: "spoiled", room: room.id, piece: piece.key, left });
  const save = async () => {
    const stays = stayHere();
    const saved = await act(() => writeTold(journal, answer.entries), answer.words);
    if (saved && stays()) goInstead("pieces", "saw", piece.letter);
  };
  return html`<${Page} title="${piece.letter} spoiled" aside=${piece.part_name} kind="form">
    ${heard ? null : html`<${Asleep} what="What that comes to" />`}
    ${answer ? html`<section role="status">
        <p><b>${answer.board}</b></p><p>${answer.left}</p><p>${answer.cost}</p><p>${answer.words}</p>
      </section>
      <details class="more"><summary>The working</summary>
        <ul class="rows working">${answer.working.map((/** @type {any} */ step, /** @type {number} */ place) => html`<${Step} step=${step} key=${place} />`)}</ul></details>` : null}
    <div class="low now">
      <${Field} label="What can still be used of it" value=${text} onInput=${setText} wrong=${error?.message}
        hint="How long it is without the spoiled end; empty where none of it is." />
      <div class="last-row">
        <${Button} onTouch=${() => go("pieces", "saw", piece.letter)}>Back<//>
        <${Button} kind="main" disabled=${!answer || Boolean(error)} onTouch=${save} next="it is on the list again">Cut it again<//>
      </div>
    </div>
  <//>`;
}

/** A note to each corner that the piece is cut to. @param {{piece: any}} props */
export function TestCuts({ piece }) {
  return html`<${Page} title="Test cuts" aside=${piece.part_name} kind="form">
    <p class="pencil">Cut two scraps at the setting and hold them in the corner, before the board is cut. What they show is told
      with every piece that is cut to it.</p>
    ${piece.tried.map((/** @type {any} */ one) => html`<${TestCut} one=${one} key=${`${one.of} ${one.what}`} />`)}
    <div class="low last-row"><${Button} onTouch=${() => go("pieces", "saw", piece.letter)}>Back<//></div>
  <//>`;
}

/** @param {{one: any}} props */
function TestCut({ one }) {
  const { journal, act } = useNotebook();
  const [text, setText] = useState(one.text);
  const name = `${one.name}, at the ${one.side} end`;
  const isSaved = text.trim() === one.text;
  const save = () => act(() => noteTestCut(journal, one, text.trim()), `${name}: ${text.trim() || "nothing noted"}`);
  return html`<div class="setting">
    <${Field} label="What scraps showed: ${name}" value=${text} onInput=${setText} onEnter=${isSaved ? undefined : save}
      hint="such as 45.5 fits, or 45.5 open at the face, use 45.7" wrong=${text.trim().length > 200 ? "Say it in 200 letters." : ""} />
    <${Button} disabled=${isSaved || text.trim().length > 200} onTouch=${save}>${isSaved && text ? "Saved" : "Save"}<//>
  </div>`;
}

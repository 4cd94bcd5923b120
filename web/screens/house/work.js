// @ts-check
// The order of work in a room: what is done, what can be done today, what waits for what, and what to read again.
import { html } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { Refusal } from "../../controls/notes.js";
import { go, link } from "../../controls/route.js";
import { Cautions } from "../../frame/cautions.js";
import { Asleep } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { useTicks } from "../../notebook/ticks.js";
import { say } from "../../words/words.js";

/** What can be done stands first; what is done is looked for least. */
const GROUPS = { today: ["ready"], later: ["waits"], done: ["done", "early", "skipped"] };
/** States that are told at the step. */
const TOLD = ["skipped", "early"];

/** So many readings in doubt are shown at once: more would push out of sight what can be done. */
const FEW = 6;

/** @param {{room: string}} props */
export function Work({ room }) {
  const { outline } = useNotebook();
  const { answer, error, heard, older } = useAnswer({ ask: "work", room });
  const name = outline.rooms.get(room)?.name ?? say("room-unnamed");
  return html`<${Page} title=${say("work", { room: name })} tab="house" kind="house" older=${older} of=${room}>
    ${heard ? null : html`<${Asleep} what=${say("work-steps")} />`}
    <${Refusal} error=${error} />
    ${answer ? html`<${Answered} answer=${answer} room=${room} />` : null}
    <div class="low last-row"><${Button} onTouch=${() => go("house")}>${say("back")}<//></div>
  <//>`;
}

/** @param {{answer: any, room: string}} props */
function Answered({ answer, room }) {
  const { put } = useTicks(room, "work");
  const names = new Map(answer.steps.map((/** @type {any} */ step) => [step.key, step.name]));
  return html`
    ${answer.in_doubt.length ? html`<${InDoubt} doubts=${answer.in_doubt} names=${names} />` : null}
    ${answer.in_place?.length ? html`<${InPlace} pieces=${answer.in_place} />` : null}
    ${Object.entries(GROUPS).map(([group, states]) => html`<${Group} title=${say(`work-group-${group}`)} put=${put} key=${group}
      steps=${answer.steps.filter((step) => states.includes(step.state))} />`)}
    <${Cautions} cautions=${answer.cautions} />`;
}

/** Read before a step that changed what was read. @param {{doubts: any[], names: Map<string, string>}} props */
function InDoubt({ doubts, names }) {
  return html`<section class="group" aria-label=${say("work-doubts")}><h2 class="wrong">${say("work-doubts")} <small>${doubts.length}</small></h2>
    <details class="more" open=${doubts.length <= FEW}><summary>${say("work-doubts.told")}</summary>
    <ul class="rows">${doubts.map(
      (one) => html`<li key=${`${one.of} ${one.what}`}><a class="row" href=${link("survey", "row", one.of, one.what)}>
        <span class="row-words"><span>${one.title}</span><small>${one.why || names.get(one.because)}</small></span></a></li>`,
    )}</ul></details></section>`;
}

/** Casing is up: what goes from it to a corner can be read where it goes. @param {{pieces: any[]}} props */
function InPlace({ pieces }) {
  return html`<section class="group" aria-label=${say("work-place")}><h2>${say("work-place")} <small>${pieces.length}</small></h2>
    <p class="pencil">${say("work-place.told")}</p>
    <ul class="rows">${pieces.map(
      (one) => html`<li key=${one.of}><a class="row" href=${link("pieces", one.letter, "place")}>
        <span class="ring ${one.provisional ? "ring-provisional" : ""}">${one.letter}</span><span class="row-words"><span>${one.part_name}</span></span></a></li>`,
    )}</ul></section>`;
}

/** @param {{title: string, steps: any[], put: any}} props */
function Group({ title, steps, put }) {
  if (!steps.length) return null;
  return html`<section class="group" aria-label=${title}><h2>${title}</h2>
    <ol class="rows">${steps.map((step) => html`<${Step} ...${{ step, put }} key=${step.key} />`)}</ol></section>`;
}

/** @param {{step: any, put: any}} props */
function Step({ step, put }) {
  const waits = step.waits_for.map((/** @type {string} */ key) => say(`work-short-${key}`)).join(", ");
  const open = ["ready", "waits"].includes(step.state);
  const state = TOLD.includes(step.state) ? say(`work-state-${step.state}`) : "";
  const notes = [state, waits && say("work-waits", { steps: waits }), open ? step.why : ""];
  return html`<li class="row">
    <span class="row-words"><span>${step.name}</span>
      ${notes.filter(Boolean).map((words) => html`<small class=${step.state === "early" ? "wrong" : null} key=${words}>${words}</small>`)}</span>
    ${
      open
        ? html`<${Button} label=${say("work-done.what", { step: step.name })} onTouch=${() => put(step.key, "done", step.name)}>
            ${say("work-done")}<//>
          <${Button} kind="plain" label=${say("work-skip.what", { step: step.name })} onTouch=${() => put(step.key, "skipped", step.name)}>
            ${say("work-skip")}<//>`
        : html`<${Button} kind="plain" label=${say("work-undo.what", { step: step.name })} onTouch=${() => put(step.key, null, step.name)}>
            ${say("work-undo")}<//>`
    }
  </li>`;
}

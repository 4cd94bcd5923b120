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

const STATES = { done: "", ready: "", waits: "", skipped: "not in this room", early: "done before its time" };
/** What can be done stands first; what is done is looked for least. */
const GROUPS = [
  ["Today", ["ready"]],
  ["Later", ["waits"]],
  ["Done", ["done", "early", "skipped"]],
];

/** So many readings in doubt are shown at once: more would push out of sight what can be done. */
const FEW = 6;

/** @param {{room: string}} props */
export function Work({ room }) {
  const { outline } = useNotebook();
  const { answer, error, heard, older } = useAnswer({ ask: "work", room });
  const name = outline.rooms.get(room)?.name ?? "the room";
  return html`<${Page} title=${`Work: ${name}`} tab="house" kind="house" older=${older}>
    ${heard ? null : html`<${Asleep} what="The steps" />`}
    <${Refusal} error=${error} />
    ${answer ? html`<${Answered} answer=${answer} room=${room} />` : null}
    <div class="low last-row"><${Button} onTouch=${() => go("house")}>Back<//></div>
  <//>`;
}

/** @param {{answer: any, room: string}} props */
function Answered({ answer, room }) {
  const { put } = useTicks(room, "work");
  const names = new Map(answer.steps.map((/** @type {any} */ step) => [step.key, step.name]));
  return html`
    ${answer.in_doubt.length ? html`<${InDoubt} doubts=${answer.in_doubt} names=${names} />` : null}
    ${answer.in_place?.length ? html`<${InPlace} pieces=${answer.in_place} />` : null}
    ${GROUPS.map(([title, states]) => html`<${Group} title=${title} steps=${answer.steps.filter((step) => states.includes(step.state))} put=${put} key=${title} />`)}
    <${Cautions} cautions=${answer.cautions} />`;
}

/** Read before a step that changed what was read. @param {{doubts: any[], names: Map<string, string>}} props */
function InDoubt({ doubts, names }) {
  return html`<section class="group" aria-label="Read again"><h2 class="wrong">Read again <small>${doubts.length}</small></h2>
    <details class="more" open=${doubts.length <= FEW}><summary>Read before a step that changes them</summary>
    <ul class="rows">${doubts.map(
      (one) => html`<li key=${`${one.of} ${one.what}`}><a class="row" href=${link("survey", "row", one.of, one.what)}>
        <span class="row-words"><span>${one.title}</span><small>${one.why || names.get(one.because)}</small></span></a></li>`,
    )}</ul></details></section>`;
}

/** Casing is up: what goes from it to a corner can be read where it goes. @param {{pieces: any[]}} props */
function InPlace({ pieces }) {
  return html`<section class="group" aria-label="Read in place"><h2>Read in place <small>${pieces.length}</small></h2>
    <p class="pencil">The casing is up. A length read now stands before the room's sum.</p>
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
  const waits = step.waits_for.map((/** @type {string} */ key) => key.replaceAll("_", " "));
  const open = ["ready", "waits"].includes(step.state);
  const notes = [STATES[/** @type {keyof STATES} */ (step.state)], waits.length ? `waits for ${waits.join(", ")}` : "", open ? step.why : ""];
  return html`<li class="row">
    <span class="row-words"><span>${step.name}</span>
      ${notes.filter(Boolean).map((words) => html`<small class=${step.state === "early" ? "wrong" : null} key=${words}>${words}</small>`)}</span>
    ${
      open
        ? html`<${Button} label="${step.name}: done" onTouch=${() => put(step.key, "done", step.name)}>done<//>
          <${Button} kind="plain" label="${step.name}: not in this room" onTouch=${() => put(step.key, "skipped", step.name)}>skip<//>`
        : html`<${Button} kind="plain" label="${step.name}: not yet" onTouch=${() => put(step.key, null, step.name)}>not yet<//>`
    }
  </li>`;
}

// @ts-check
// The history of one figure: every reading as it was typed, the struck ones struck through and never gone.
import { html } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { Figure } from "../../controls/figure.js";
import { go, link } from "../../controls/route.js";
import { Page } from "../../frame/page.js";
import { useNotebook } from "../../notebook/notebook.js";
import { useSurvey } from "../../notebook/survey.js";
import { strike } from "../../notebook/write.js";
import { Photos } from "../../photos/photos.js";
import { say } from "../../words/words.js";

/** @param {{place: string[]}} props */
export function Row({ place: [of, what] }) {
  const { room } = useNotebook();
  const survey = useSurvey(room.id);
  const row = survey.rows.find((one) => one.of === of && one.what === what);
  if (!row) {
    return html`<${Page} title=${say("reading")} tab="survey">
      <p class="onward"><a href=${link("survey")}>${say("back-to-room")}</a></p>
    <//>`;
  }
  return html`<${Page} title=${row.title} tab="survey" kind="history" older=${survey.older}><${History} row=${row} /><//>`;
}

/** On a page of its own, or beside the list. @param {{row: any}} props */
export function History({ row }) {
  return html`<section class="heads-up">
      ${row.figure ? html`<p class="hero"><${Figure} shown=${row.figure.shown} size="big" /></p>` : null}
      ${row.note ? html`<p class=${row.state === "check" ? "wrong" : "pencil"}>${row.note}</p>` : null}
      ${row.why || row.hint ? html`<p class="pencil">${row.why ? say("row-why", { hint: row.hint, why: row.why }) : row.hint}</p>` : null}
    </section>
    <ul class="rows" aria-label=${say("row-readings")}>
      ${row.readings.map((one) => html`<${Taken} reading=${one} key=${one.entry} />`)}
    </ul>
    ${row.readings.length ? null : html`<p class="pencil">${say("row-readings.none")}</p>`}
    <${Photos} of=${row.of} from=${["survey", "row", row.of, row.what]} key=${row.of} />
    <div class="low last-row">
      <${Button} onTouch=${() => go("survey")}>${say("back")}<//>
      <${Button} kind="main" onTouch=${() => go("survey", "read", row.of, row.what)}>
        ${say(row.readings.length ? "reading-again" : "reading-take")}
      <//>
    </div>`;
}

/** @param {{reading: any}} props */
function Taken({ reading }) {
  const { journal, act } = useNotebook();
  const { entry, text, struck } = reading;
  if (struck) {
    const restore = () => act(() => strike(journal, reading.strike, "restored by hand"), say("row-restored", { text }));
    return html`<li class="row">
      <span class="row-words"><s>${text}</s><small>${say("row-struck")}</small></span>
      <${Button} label=${say("restore.what", { what: text })} onTouch=${restore}>${say("restore")}<//>
    </li>`;
  }
  const take = () => act(() => strike(journal, entry, "struck by hand"), say("row-struck.done", { text }));
  return html`<li class="row">
    <span class="row-words">
      <span>${text}</span>
      <small class=${reading.error ? "wrong" : ""}>${reading.error ?? reading.words ?? ""}</small>
    </span>
    <${Button} label=${say("strike.what", { what: text })} onTouch=${take}>${say("strike")}<//>
  </li>`;
}

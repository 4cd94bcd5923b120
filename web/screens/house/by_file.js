// @ts-check
// The notebook by file, with no network: what is on this device alone, a file to carry, and what a file brought.
import { html, useState } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { useNotebook } from "../../notebook/notebook.js";
import { say } from "../../words/words.js";

const NAMED_AT_MOST = 20;

/** @param {{tell: (doing: () => Promise<any>, done: string) => Promise<void>}} props */
export function ByFile({ tell }) {
  const { journal, counts } = useNotebook();
  const [given, setGiven] = useState(/** @type {any} */ (null));
  const give = (/** @type {any} */ how) =>
    tell(async () => {
      setGiven(null);
      try {
        setGiven(await journal.exportFile(how));
      } catch (failure) {
        if (/** @type {any} */ (failure)?.name !== "AbortError") throw failure; // the person thought better of it
      }
    }, "");
  const fresh = counts.unfiled && counts.unfiled < counts.entries;
  const unfile = () => tell(() => journal.unfile(given.ids).then(() => setGiven(null)), say("file-given.absent-done"));
  return html`<h3>${say("file")}</h3>
    <${Alone} counts=${counts} />
    <div class="side-by-side">
      <${Button} onTouch=${() => give({})}>${say("file-save")}<//>
      ${fresh ? html`<${Button} onTouch=${() => give({ onlyNew: true })}>${say("file-save.new", { count: counts.unfiled })}<//>` : null}
    </div>
    ${journal.canShare() ? html`<${Share} give=${give} fresh=${fresh} count=${counts.unfiled} />` : null}
    ${given ? html`<${Given} given=${given} onAbsent=${unfile} />` : null}
    <${Choose} />
    <p class="pencil">${say("file-add.told")}</p>
    <${Outcomes} />`;
}

/** @param {{counts: any}} props */
function Alone({ counts }) {
  if (!counts.entries) return null;
  if (!counts.alone) return html`<p>${say("file-alone.none")}</p>`;
  return html`<p>${say("file-alone", { count: counts.alone })}</p>`;
}

/** @param {{give: (how: any) => void, fresh: any, count: number}} props */
function Share({ give, fresh, count }) {
  return html`<div class="side-by-side">
    <${Button} onTouch=${() => give({ share: true })}>${say("file-share")}<//>
    ${fresh ? html`<${Button} onTouch=${() => give({ share: true, onlyNew: true })}>${say("file-share.new", { count })}<//>` : null}
  </div>`;
}

/** A browser tells nobody whether a file was saved in the end; the person sees it. @param {{given: any, onAbsent: () => void}} props */
function Given({ given, onAbsent }) {
  return html`<p role="status">${say("file-given", { count: given.ids.length, file: given.name })}</p>
    <${Button} kind="plain" onTouch=${onAbsent}>${say("file-given.absent")}<//>`;
}

function Choose() {
  const { bring } = useNotebook();
  return html`<label class="button button-side file"><span>${say("file-add")}</span>
    <input type="file" multiple accept=".json,.ndjson,.txt,.jsonl" onChange=${(event) => {
      const files = [...event.currentTarget.files];
      event.currentTarget.value = "";
      if (files.length) bring(files);
    }} /></label>`;
}

/** What came of the files that were brought last. */
function Outcomes() {
  const { brought } = useNotebook();
  if (!brought) return null;
  if (!brought.length) return html`<p role="status">${say("file-reading")}</p>`;
  return brought.map((one) => html`<${Outcome} one=${one} key=${one} />`);
}

/** @param {{one: import("../../notebook/brought.js").Brought}} props */
function Outcome({ one: { name, file, found, wrong } }) {
  if (!found) return html`<p class="wrong" role="status">${say("file-wrong", { file: name, why: wrong })}</p>`;
  if (found.another || found.unknown) return html`<${Another} name=${name} file=${file} unknown=${Boolean(found.unknown)} />`;
  const { added, known, other, short, leftOut, attached } = found;
  if (!(added + known + other)) return html`<p class="wrong" role="status">${say("file-wrong.empty", { file: name })}</p>`;
  return html`<p role="status">${say("file-read", { added, known })}</p>
    ${attached ? html`<p>${say("file-read-attached", { count: attached })}</p>` : null}
    ${other ? html`<p class="wrong">${say("file-read-other", { count: other })}</p>` : null}
    ${short ? html`<p class="wrong">${say("file-short")}</p>` : null}
    ${leftOut.length ? html`<${LeftOut} lines=${leftOut} />` : null}`;
}

/**
 * A file of a notebook with other houses, which may have come by mistake, or one that names no house here and came from
 * nobody knows whom: it is for a person to say.
 * @param {{name: string, file: Blob, unknown: boolean}} props
 */
function Another({ name, file, unknown }) {
  const { bring } = useNotebook();
  const key = unknown ? "file-unknown" : "file-another";
  return html`<p class="wrong" role="status">${say(key, { file: name })}</p>
    <${Button} onTouch=${() => bring([file], { beside: true })}>${say(unknown ? "file-unknown.add" : "file-another.beside")}<//>`;
}

/** Lines of a file that are damaged or no entries, by their numbers. @param {{lines: any[]}} props */
function LeftOut({ lines }) {
  const { journal } = useNotebook();
  const numbers = lines.slice(0, NAMED_AT_MOST).map(({ number }) => number);
  const said = { count: lines.length, lines: numbers.join(", ") };
  return html`<p class="wrong">${say(lines.length > NAMED_AT_MOST ? "file-left-out.more" : "file-left-out", said)}</p>
    <${Button} onTouch=${() => journal.saveLeftOut(lines)}>${say("file-left-out.save")}<//>`;
}

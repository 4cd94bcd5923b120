// @ts-check
// The notebook by file, with no network: what is on this device alone, a file to carry, and what a file brought.
import { html, useState } from "../../controls/ui.js";
import { Button } from "../../controls/controls.js";
import { useNotebook } from "../../notebook/notebook.js";

const NAMED_AT_MOST = 20;

/** @param {number} count */
const entriesOf = (count) => (count === 1 ? "1 entry" : `${count} entries`);

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
  return html`<h3>By file</h3>
    <${Alone} counts=${counts} />
    <div class="side-by-side">
      <${Button} onTouch=${() => give({})}>Save to a file<//>
      ${fresh ? html`<${Button} onTouch=${() => give({ onlyNew: true })}>Save what is new (${counts.unfiled})<//>` : null}
    </div>
    ${journal.canShare() ? html`<${Share} give=${give} fresh=${fresh} count=${counts.unfiled} />` : null}
    ${given ? html`<${Given} given=${given} onAbsent=${() => tell(() => journal.unfile(given.ids).then(() => setGiven(null)), "Its entries count as in no file.")} />` : null}
    <${Choose} />
    <p class="pencil">Or drop the file on this page, or paste its text. What is here already stays as it is, so a file may
      be added any number of times, on either side.</p>
    <${Outcomes} />`;
}

/** @param {{counts: any}} props */
function Alone({ counts }) {
  if (!counts.entries) return null;
  if (!counts.alone) return html`<p>Every entry is on the laptop or in a file as well.</p>`;
  const are = counts.alone === 1 ? "is" : "are";
  return html`<p>${entriesOf(counts.alone)} ${are} on this device alone: not on the laptop, and in no file.</p>`;
}

/** @param {{give: (how: any) => void, fresh: any, count: number}} props */
function Share({ give, fresh, count }) {
  return html`<div class="side-by-side">
    <${Button} onTouch=${() => give({ share: true })}>Share the notebook<//>
    ${fresh ? html`<${Button} onTouch=${() => give({ share: true, onlyNew: true })}>Share what is new (${count})<//>` : null}
  </div>`;
}

/** A browser tells nobody whether a file was saved in the end; the person sees it. @param {{given: any, onAbsent: () => void}} props */
function Given({ given, onAbsent }) {
  return html`<p role="status">${entriesOf(given.ids.length)}, handed over as ${given.name}. Look that it has arrived.</p>
    <${Button} kind="plain" onTouch=${onAbsent}>It is not there<//>`;
}

function Choose() {
  const { bring } = useNotebook();
  return html`<label class="button button-side file"><span>Add from a file</span>
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
  if (!brought.length) return html`<p role="status">The file is being read.</p>`;
  return brought.map((one) => html`<${Outcome} one=${one} key=${one} />`);
}

/** @param {{one: import("../../notebook/brought.js").Brought}} props */
function Outcome({ one: { name, found, wrong } }) {
  if (!found) return html`<p class="wrong" role="status">${name}: ${wrong}</p>`;
  const { added, known, other, short, leftOut, attached } = found;
  if (!(added + known + other)) return html`<p class="wrong" role="status">${name} holds no entry of a notebook: nothing was added.</p>`;
  return html`<p role="status">The entries of the file are in the journal. ${added} added, ${known} were here already.</p>
    ${attached ? html`<p>${attached === 1 ? "1 attachment of it is here." : `${attached} attachments of it are here.`}</p>` : null}
    ${other ? html`<p class="wrong">${entriesOf(other)} of it say something else here: see below.</p>` : null}
    ${short ? html`<p class="wrong">The file was cut short: it says that it holds more.</p>` : null}
    ${leftOut.length ? html`<${LeftOut} lines=${leftOut} />` : null}`;
}

/** Lines of a file that are damaged or no entries, by their numbers. @param {{lines: any[]}} props */
function LeftOut({ lines }) {
  const { journal } = useNotebook();
  const numbers = lines.slice(0, NAMED_AT_MOST).map(({ number }) => number);
  const more = lines.length > NAMED_AT_MOST ? " and more" : "";
  return html`<p class="wrong">Left out, damaged or no entries: line ${numbers.join(", ")}${more}.</p>
    <${Button} onTouch=${() => journal.saveLeftOut(lines)}>Save what was left out<//>`;
}

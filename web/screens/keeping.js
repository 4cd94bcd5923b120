// @ts-check
// Keeping the notebook: which device has what, sync, a file to carry, a new version, entries the laptop would not take.
import { html, useEffect, useState } from "../parts/ui.js";
import { Button, Field } from "../parts/controls.js";
import { useNotebook } from "../parts/notebook.js";

/** @param {{notebook: any}} props the engine's account of the whole notebook, or null */
export function Keeping({ notebook }) {
  const { services, sync, counts } = useNotebook();
  const [said, setSaid] = useState("");
  const tell = async (/** @type {() => Promise<any>} */ doing, done) => {
    try {
      setSaid("");
      await doing();
      setSaid(done);
    } catch (failure) {
      setSaid(String(/** @type {any} */ (failure)?.message ?? failure));
    }
  };
  const pending = counts.pending
    ? `${counts.pending} saved here and not yet on the laptop`
    : "nothing the laptop lacks";
  return html`<section aria-labelledby="keeping">
    <h2 id="keeping">This notebook</h2>
    <p>${sync} · ${pending}</p>
    ${said ? html`<p role="status">${said}</p>` : null}
    <${Update} />
    <${Failed} />
    <div class="side-by-side">
      <${Button} onTouch=${() => tell(() => services.sync.now(), "The laptop was asked.")}>Sync now<//>
      <${Button} onTouch=${() => tell(() => services.journal.exportFile(), "The journal is in a file.")}>Save to a file<//>
    </div>
    <${FromFile} tell=${tell} />
    <${Refused} />
    ${notebook ? html`<${Devices} devices=${notebook.devices} /><${Unread} count=${notebook.kept_unread} />` : null}
  </section>`;
}

/** An engine that stopped, why, and the way to start another. */
function Failed() {
  const { services, engine } = useNotebook();
  if (!engine.startsWith("failed")) return null;
  return html`<p class="wrong">The engine ${engine}.</p>
    <${Button} onTouch=${() => services.engine.restart()}>Start the engine again<//>`;
}

/** @param {{count: number}} props */
function Unread({ count }) {
  if (!count) return null;
  return html`<p class="pencil">${count} entries were written by a newer Scantling: kept and passed on, not read.</p>`;
}

/** Every device that ever wrote here, and how much; this one can be given a name. @param {{devices: any[]}} props */
function Devices({ devices }) {
  const { services, act } = useNotebook();
  const { journal } = services;
  const [name, setName] = useState(devices.find((one) => one.device === journal.device)?.name ?? "");
  const save = () => act(() => journal.append("device", { name: name.trim() }), `This device is called ${name}`);
  const called = (/** @type {any} */ one) =>
    `${one.name ?? "a device without a name"}${one.device === journal.device ? ", this one" : ""}`;
  return html`<h3>Devices</h3>
    <ul class="rows">
      ${devices.map(
        (one) => html`<li class="row" key=${one.device}>
          <span class="row-words">${called(one)}</span><small>${one.entries} entries</small>
        </li>`,
      )}
    </ul>
    <details class="more">
      <summary>Name this device</summary>
      <${Field} label="What to call it" value=${name} onInput=${setName} onEnter=${save} hint="Such as phone, or laptop." />
      <${Button} disabled=${!name.trim()} onTouch=${save}>Save the name<//>
    </details>`;
}

/** @param {{tell: any}} props */
function FromFile({ tell }) {
  const { journal } = useNotebook();
  return html`<label class="button button-side file"><span>Add from a file</span>
    <input type="file" accept=".json,.ndjson" onChange=${(event) => {
      const [file] = event.currentTarget.files;
      if (file) tell(() => journal.importFile(file), "The entries of the file are in the journal.");
      event.currentTarget.value = "";
    }} /></label>`;
}

function Update() {
  const { services, newer } = useNotebook();
  if (!newer) return null;
  return html`<p>A new version of Scantling is on this device.</p>
    <${Button} kind="main" onTouch=${() => services.update.apply()}>Use the new version<//>`;
}

/** Entries that the laptop would not take stay here and are named. */
function Refused() {
  const { journal, counts } = useNotebook();
  const [refused, setRefused] = useState(/** @type {any[]} */ ([]));
  useEffect(() => {
    journal.refused().then(setRefused);
  }, [journal, counts]);
  if (!refused.length) return null;
  return html`<h3 class="wrong">The laptop would not take</h3>
    <p class="pencil">They are kept here and left out there.</p>
    <ul class="rows">
      ${refused.map(
        ({ entry, why }) => html`<li class="row" key=${entry.id}>
          <span class="row-words">
            <span>${entry.kind}: ${entry.body.text ?? entry.body.name ?? entry.id}</span>
            <small class="wrong">${why}</small>
          </span>
        </li>`,
      )}
    </ul>`;
}

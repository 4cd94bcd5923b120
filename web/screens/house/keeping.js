// @ts-check
// Keeping the notebook: which device has what, sync, a new version, entries the laptop would not take.
import { html, useEffect, useState } from "../../controls/ui.js";
import { Button, Field } from "../../controls/controls.js";
import { useWatched } from "../../controls/watch.js";
import { useCover } from "../../frame/cover.js";
import { useNotebook } from "../../notebook/notebook.js";
import { ByFile } from "./by_file.js";

/** @param {{notebook: any}} props the engine's account of the whole notebook, or null */
export function Keeping({ notebook }) {
  const { services, sync, counts } = useNotebook();
  const [said, setSaid] = useState("");
  const cover = useCover();
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
    <${Carried} />
    <p class=${cover.ready ? null : "wrong"}>${cover.words}</p>
    <${Promised} />
    ${said ? html`<p role="status">${said}</p>` : null}
    <${Update} />
    <${Failed} />
    <${Button} onTouch=${() => tell(() => services.sync.now(), "The laptop was asked.")}>Sync now<//>
    <${ByFile} tell=${tell} />
    <${Refused} tell=${tell} />
    <p class="pencil">Scantling, build ${document.documentElement.dataset.build}</p>
    ${notebook ? html`<${Devices} devices=${notebook.devices} /><${Unread} count=${notebook.kept_unread} />` : null}
  </section>`;
}

/** How far attachments have come, which go after the entries. */
function Carried() {
  const { services } = useNotebook();
  const carried = useWatched(
    (listen) => services.sync.onState(listen),
    () => services.sync.carried,
  );
  return carried ? html`<p class="pencil">${carried}</p>` : null;
}

/** Whether the browser has promised to keep what is saved here; a private window promises nothing. */
function Promised() {
  const { services } = useNotebook();
  const [promised, setPromised] = useState(/** @type {boolean | null} */ (null));
  useEffect(() => {
    services.journal.isPromised().then(setPromised);
  }, []);
  if (promised === null) return null;
  if (promised) return html`<p>This browser has promised to keep it.</p>`;
  return html`<p class="pencil">This browser has not promised to keep it: it may clear it when room runs short, and a private
    window keeps nothing once it is closed. Share it with the laptop, or save it to a file.</p>`;
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

function Update() {
  const { services, newer } = useNotebook();
  if (!newer) return null;
  return html`<p>A new version of Scantling is on this device.</p>
    <${Button} kind="main" onTouch=${() => services.update.apply()}>Use the new version<//>`;
}

/** What stands otherwise here and there stays here and is named, each with a way out. @param {{tell: any}} props */
function Refused({ tell }) {
  const { services, journal, counts } = useNotebook();
  const [refused, setRefused] = useState(/** @type {any[]} */ ([]));
  useEffect(() => {
    journal.refused().then(setRefused);
  }, [journal, counts]);
  const carried = refused.filter((one) => one.of === "file");
  const left = refused.filter((one) => one.of !== "file");
  const again = () => tell(() => journal.sendAgain().then(() => services.sync.now()), "The laptop was asked again.");
  return html`
    ${carried.length ? html`<${Lefts} title="A file says otherwise" words="Kept apart: what is here stands." them=${carried} />` : null}
    ${left.length ? html`<${Lefts} title="The laptop would not take" words="They are kept here and left out there." them=${left} />` : null}
    ${left.some(({ text }) => !text) ? html`<${Button} onTouch=${again}>Send them again<//>` : null}`;
}

/** @param {{title: string, words: string, them: any[]}} props */
function Lefts({ title, words, them }) {
  return html`<h3 class="wrong">${title}</h3>
    <p class="pencil">${words}</p>
    <ul class="rows">
      ${them.map((one) => html`<${Left} one=${one} key=${one.text ?? one.id} />`)}
    </ul>`;
}

/** One of them. Where the laptop has other words, these can be said anew beside them. @param {{one: any}} props */
function Left({ one: { entry, why, text } }) {
  const { journal, act } = useNotebook();
  const anew = () => act(() => journal.writeAnew(text), "Written anew");
  return html`<li class="row">
    <span class="row-words">
      <span>${entry.kind}: ${entry.body.text ?? entry.body.name ?? entry.id}</span>
      <small class="wrong">${why}</small>
    </span>
    ${text ? html`<${Button} onTouch=${anew}>Write it anew<//>` : null}
  </li>`;
}

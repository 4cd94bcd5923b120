// @ts-check
// Keeping the notebook: which device has what, sync, a new version, entries the laptop would not take.
import { html, useEffect, useState } from "../../controls/ui.js";
import { Button, Field } from "../../controls/controls.js";
import { useWatched } from "../../controls/watch.js";
import { Felt } from "../../device/how_felt.js";
import { Install } from "../../device/install.js";
import { useCover } from "../../frame/cover.js";
import { useNotebook } from "../../notebook/notebook.js";
import { say, sayTold } from "../../words/words.js";
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
      setSaid(sayTold(failure));
    }
  };
  return html`<section aria-labelledby="keeping">
    <h2 id="keeping">${say("keeping")}</h2>
    <p>${say("keeping-stands", { sync, count: counts.pending })}</p>
    <${Carried} />
    <p class=${cover.ready ? null : "wrong"}>${cover.words}</p>
    <${Promised} />
    <${Install} />
    ${said ? html`<p role="status">${said}</p>` : null}
    <${Update} />
    <${Failed} />
    <${Button} onTouch=${() => tell(() => services.sync.now(), say("keeping-sync.done"))}>${say("keeping-sync")}<//>
    <${ByFile} tell=${tell} />
    <${Refused} tell=${tell} />
    <${Felt} />
    <p class="pencil">${say("keeping-build", { build: document.documentElement.dataset.build ?? "" })}</p>
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
  return carried ? html`<p class="pencil">${sayTold(carried)}</p>` : null;
}

/** Whether the browser has promised to keep what is saved here; a private window promises nothing. */
function Promised() {
  const { services } = useNotebook();
  const [promised, setPromised] = useState(/** @type {boolean | null} */ (null));
  useEffect(() => {
    services.journal.isPromised().then(setPromised);
  }, []);
  if (promised === null) return null;
  if (promised) return html`<p>${say("keeping-promised")}</p>`;
  return html`<p class="pencil">${say("keeping-promised.not")}</p>`;
}

/** An engine that stopped, why, and the way to start another. */
function Failed() {
  const { services, engine } = useNotebook();
  if (!engine.startsWith("failed")) return null;
  return html`<p class="wrong">${say("engine-failed", { why: sayTold(engine.replace(/^failed: /, "")) })}</p>
    <${Button} onTouch=${() => services.engine.restart()}>${say("engine-failed.again")}<//>`;
}

/** @param {{count: number}} props */
function Unread({ count }) {
  if (!count) return null;
  return html`<p class="pencil">${say("keeping-unread", { count })}</p>`;
}

/** Every device that ever wrote here, and how much; this one can be given a name. @param {{devices: any[]}} props */
function Devices({ devices }) {
  const { services, act } = useNotebook();
  const { journal } = services;
  const [name, setName] = useState(devices.find((one) => one.device === journal.device)?.name ?? "");
  const save = () => act(() => journal.append("device", { name: name.trim() }), say("keeping-name.done", { name }));
  const called = (/** @type {any} */ one) => {
    const device = one.name ?? say("keeping-devices.unnamed");
    return one.device === journal.device ? say("device-this", { device }) : device;
  };
  return html`<h3>${say("keeping-devices")}</h3>
    <ul class="rows">
      ${devices.map(
        (one) => html`<li class="row" key=${one.device}>
          <span class="row-words">${called(one)}</span><small>${say("keeping-devices-wrote", { count: one.entries })}</small>
        </li>`,
      )}
    </ul>
    <details class="more">
      <summary>${say("keeping-name")}</summary>
      <${Field} label=${say("keeping-name.label")} value=${name} onInput=${setName} onEnter=${save} hint=${say("keeping-name.hint")} />
      <${Button} disabled=${!name.trim()} onTouch=${save}>${say("save-name")}<//>
    </details>`;
}

function Update() {
  const { services, newer } = useNotebook();
  if (!newer) return null;
  return html`<p>${say("keeping-update")}</p>
    <${Button} kind="main" onTouch=${() => services.update.apply()}>${say("keeping-update.take")}<//>`;
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
  const again = () => tell(() => journal.sendAgain().then(() => services.sync.now()), say("keeping-refused.asked"));
  return html`
    ${carried.length ? html`<${Lefts} title=${say("keeping-file")} words=${say("keeping-file.told")} them=${carried} />` : null}
    ${left.length ? html`<${Lefts} title=${say("keeping-refused")} words=${say("keeping-refused.told")} them=${left} />` : null}
    ${left.some(({ text }) => !text) ? html`<${Button} onTouch=${again}>${say("keeping-refused.again")}<//>` : null}`;
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
  const anew = () => act(() => journal.writeAnew(text), say("keeping-anew.done"));
  return html`<li class="row">
    <span class="row-words">
      <span>${say("keeping-left", { kind: entry.kind, text: entry.body.text ?? entry.body.name ?? entry.id })}</span>
      <small class="wrong">${sayTold(why)}</small>
    </span>
    ${text ? html`<${Button} onTouch=${anew}>${say("keeping-anew")}<//>` : null}
  </li>`;
}

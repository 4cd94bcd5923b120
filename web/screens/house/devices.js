// @ts-check
// Who may enter: on the laptop the devices that were let in and a code for one more; on any other device, the way in.
import { html, useEffect, useState } from "../../controls/ui.js";
import { Button, Field } from "../../controls/controls.js";
import { useNotebook } from "../../notebook/notebook.js";
import { say, sayTold, sayWith } from "../../words/words.js";

export function Entrance() {
  const { laptop, sync: sharing } = useNotebook().services;
  const [state, setState] = useState(/** @type {any} */ (null));
  const [trouble, setTrouble] = useState("");
  const look = () =>
    laptop.callLaptop("GET", "/api/devices").then(setState, (/** @type {any} */ failure) => {
      setState(failure.status === 401 ? "outside" : null);
    });
  useEffect(() => {
    look();
  }, []);
  const tell = async (/** @type {() => Promise<any>} */ doing) => {
    try {
      setTrouble("");
      await doing();
      await look();
    } catch (failure) {
      setTrouble(sayTold(failure));
    }
  };
  if (!state) return null;
  return html`<section aria-labelledby="entrance">
    <h2 id="entrance">${say("entrance")}</h2>
    ${trouble ? html`<p class="wrong" role="alert">${trouble}</p>` : null}
    ${
      state === "outside"
        ? html`<${WayIn} onPair=${(code, name) => tell(() => laptop.pair(code, name).then(() => sharing.now()))} />`
        : html`<${LetIn} state=${state} tell=${tell} />`
    }
  </section>`;
}

/** @param {{onPair: (code: string, name: string) => void}} props */
function WayIn({ onPair }) {
  const { laptop } = useNotebook().services;
  const [code, setCode] = useState(laptop.codeBrought());
  const [name, setName] = useState(say("entrance-name.usual"));
  const ready = code.trim() && name.trim();
  const go = () => onPair(code, name.trim());
  return html`<p>${say("entrance-outside")}</p>
    <${Field} label=${say("entrance-code")} value=${code} onInput=${setCode} hint=${say("entrance-code.hint")} />
    <${Field} label=${say("entrance-name")} value=${name} onInput=${setName} onEnter=${ready ? go : undefined} />
    <${Button} kind="main" disabled=${!ready} onTouch=${go}>${say("entrance-enter")}<//>`;
}

/** @param {{state: any, tell: (doing: () => Promise<any>) => Promise<void>}} props */
function LetIn({ state, tell }) {
  const { laptop } = useNotebook().services;
  const [shown, setShown] = useState(/** @type {any} */ (null));
  const show = () => tell(async () => setShown(await laptop.callLaptop("POST", "/api/devices/codes")));
  const strike = (/** @type {string} */ id) => tell(() => laptop.callLaptop("DELETE", `/api/devices/${id}`));
  return html`${state.owner ? null : html`<p>${say("entrance-inside")}</p>`}
    <ul class="rows">
      ${state.devices.map(
        (one) => html`<li class="row" key=${one.id}>
          <span class="row-words">${one.id === state.this ? say("device-this", { device: one.name }) : one.name}</span>
          ${one.struck_ms ? html`<small>${say("entrance-strike.done")}</small>` : null}
          ${
            state.owner && !one.struck_ms
              ? html`<${Button} kind="plain" onTouch=${() => strike(one.id)}>${say("entrance-strike", { device: one.name })}<//>`
              : null
          }
        </li>`,
      )}
    </ul>
    ${state.owner ? html`<${Button} onTouch=${show}>${say("entrance-pair")}<//>` : null}
    ${shown ? html`<${Shown} shown=${shown} network=${state.network} />` : null}`;
}

/** @param {{shown: any, network: any}} props */
function Shown({ shown, network }) {
  return html`<p>${sayWith("entrance-shown", { code: html`<strong>${shown.code}</strong>` })}</p>
    ${
      network
        ? html`<p>${say("entrance-new", { address: network.trust_address })}</p>
          <${Code} code=${network.trust_code} label=${say("entrance-new.code")} />
          <p class="pencil">${say("entrance-new.fingerprint", { fingerprint: network.fingerprint })}</p>
          <p>${say("entrance-known")}</p>
          <${Code} code=${shown.link_code} label=${say("entrance-known.code")} />`
        : html`<p class="pencil">${say("entrance-off")}</p>`
    }`;
}

/** @param {{code: {side: number, path: string}, label: string}} props */
function Code({ code, label }) {
  return html`<svg class="qr" viewBox="0 0 ${code.side} ${code.side}" role="img" aria-label=${label}><path d=${code.path} /></svg>`;
}

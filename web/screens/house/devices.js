// @ts-check
// Who may enter: on the laptop the devices that were let in and a code for one more; on any other device, the way in.
import { html, useEffect, useState } from "../../controls/ui.js";
import { Button, Field } from "../../controls/controls.js";
import { useNotebook } from "../../notebook/notebook.js";

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
      setTrouble(String(/** @type {any} */ (failure)?.message ?? failure));
    }
  };
  if (!state) return null;
  return html`<section aria-labelledby="entrance">
    <h2 id="entrance">Who may enter</h2>
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
  const [name, setName] = useState("phone");
  const ready = code.trim() && name.trim();
  const go = () => onPair(code, name.trim());
  return html`<p>This device is not paired with the laptop. What you measure stays here until it is.</p>
    <${Field} label="Code from the laptop" value=${code} onInput=${setCode} hint="On the laptop: House, or scantling pair." />
    <${Field} label="What to call this device" value=${name} onInput=${setName} onEnter=${ready ? go : undefined} />
    <${Button} kind="main" disabled=${!ready} onTouch=${go}>Pair this device<//>`;
}

/** @param {{state: any, tell: (doing: () => Promise<any>) => Promise<void>}} props */
function LetIn({ state, tell }) {
  const { laptop } = useNotebook().services;
  const [shown, setShown] = useState(/** @type {any} */ (null));
  const show = () => tell(async () => setShown(await laptop.callLaptop("POST", "/api/devices/codes")));
  const strike = (/** @type {string} */ id) => tell(() => laptop.callLaptop("DELETE", `/api/devices/${id}`));
  return html`${state.owner ? null : html`<p>This device is paired with the laptop.</p>`}
    <ul class="rows">
      ${state.devices.map(
        (one) => html`<li class="row" key=${one.id}>
          <span class="row-words">${one.name}${one.id === state.this ? ", this one" : ""}</span>
          ${
            one.struck_ms
              ? html`<small>struck off</small>`
              : state.owner
                ? html`<${Button} kind="plain" onTouch=${() => strike(one.id)}>Strike ${one.name} off<//>`
                : null
          }
        </li>`,
      )}
    </ul>
    ${state.owner ? html`<${Button} onTouch=${show}>Pair a device<//>` : null}
    ${shown ? html`<${Shown} shown=${shown} network=${state.network} />` : null}`;
}

/** @param {{shown: any, network: any}} props */
function Shown({ shown, network }) {
  return html`<p>The code is <strong>${shown.code}</strong>. It lets one device in, once, within ten minutes.</p>
    ${
      network
        ? html`<p>A phone that is new to this laptop begins at ${network.trust_address}</p>
          <${Code} code=${network.trust_code} label="The address where a new phone begins, as a QR code" />
          <p class="pencil">Fingerprint to compare: ${network.fingerprint}</p>
          <p>One that trusts it already is paired by this:</p>
          <${Code} code=${shown.link_code} label="The address with the code, as a QR code" />`
        : html`<p class="pencil">A phone reaches this laptop when it is started with scantling serve --lan.</p>`
    }`;
}

/** @param {{code: {side: number, path: string}, label: string}} props */
function Code({ code, label }) {
  return html`<svg class="qr" viewBox="0 0 ${code.side} ${code.side}" role="img" aria-label=${label}><path d=${code.path} /></svg>`;
}

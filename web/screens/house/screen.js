// @ts-check
// House: the house and its standard, the devices that hold its notebook, and the keeping of it: sync, file, update.
import { html, useState } from "../../controls/ui.js";
import { Button, Field, MANY } from "../../controls/controls.js";
import { link } from "../../controls/route.js";
import { useWide } from "../../controls/wide.js";
import { isYear, parseYear, Year } from "../../controls/year.js";
import { Cautions } from "../../frame/cautions.js";
import { Beside, Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { useSurvey } from "../../notebook/survey.js";
import { restateHouse, strike, strikeOut } from "../../notebook/write.js";
import { SETTING_NAMES } from "../../settings/trims.js";
import { say } from "../../words/words.js";
import { Article } from "./article.js";
import { Aside } from "./aside.js";
import { Entrance } from "./devices.js";
import { Keeping } from "./keeping.js";
import { Money } from "./money.js";
import { Lot, Receipt } from "./receipt.js";
import { Compared, RoomsOfHouse } from "./rooms.js";
import { Standard } from "./standard.js";
import { Stock } from "./stock.js";
import { Work } from "./work.js";

/** No prototype: an address may name anything. */
const PLACES = {
  __proto__: null,
  standard: Standard,
  rooms: Compared,
  money: Money,
  stock: Stock,
  work: Work,
  article: Article,
  lot: Lot,
  receipt: (/** @type {any} */ { house }) => html`<${Receipt} house=${house} priced=${true} />`,
  shelf: (/** @type {any} */ { house }) => html`<${Receipt} house=${house} priced=${false} />`,
};

/** @param {{place: string[]}} props */
export function House({ place: [name, of] }) {
  const { outline, room } = useNotebook();
  const house = outline.houses.find((one) => one.id === room?.house) ?? outline.houses[0] ?? null;
  const { answer: last, older } = useAnswer({ ask: "notebook" });
  // Settings and conflicts are acted on: those of before the last entries are not shown.
  const answer = older ? null : last;
  const known = answer?.houses.find((one) => one.id === house?.id) ?? null;
  const wide = useWide();
  const Place = house && PLACES[/** @type {keyof PLACES} */ (name)];
  const one = Place ? html`<${Place} house=${house} known=${known} room=${of} key=${`${name} ${of}`} />` : null;
  if (one && !wide) return one;
  const list = html`${
    house
      ? html`<${TheHouse} house=${house} known=${known} chosen=${name} key=${house.id} />`
      : html`<p class="onward"><a href=${link("survey")}>${say("house-make")}</a></p>`
  }
    ${answer?.conflicts.length ? html`<${Conflicts} conflicts=${answer.conflicts} />` : null}`;
  const keeping = html`<${Keeping} notebook=${answer} /><${Entrance} />`;
  return html`<${Page} title=${say("screen-house")} tab="house" kind=${wide ? "house table" : "house"} of=${name === "work" ? of : house?.id}>
    ${
      wide
        ? html`<div class="list">${list}</div>
          <div class="beside"><${Beside.Provider} value=${true}>${one ?? keeping}<//></div>`
        : html`${list}${keeping}`
    }
  <//>`;
}

/** @param {{house: any, known: any, chosen?: string}} props `chosen`: the place that is open */
function TheHouse({ house, known, chosen = "" }) {
  const { room } = useNotebook();
  // What old paint there may be is a matter of the house, and said with the survey of any of its rooms.
  const { cautions } = useSurvey(house.rooms[0]?.id ?? null);
  const at = (/** @type {string} */ name) => (name === chosen ? "true" : null);
  const rooms = html`<${RoomsOfHouse} house=${house} known=${known} />`;
  const onward = html`<p class="onward">
      ${
        room
          ? html`<a href=${link("house", "work", room.id)} aria-current=${at("work")}>${say("house-work", { room: room.name })}</a>`
          : null
      }
      ${house.rooms.length > 1 ? html`<a href=${link("house", "rooms")} aria-current=${at("rooms")}>${say("compared")}</a>` : null}
      <a href=${link("house", "money")} aria-current=${at("money")}>${say("house-money")}</a>
      <a href=${link("house", "stock")} aria-current=${at("stock")}>${say("house-stock")}</a>
      <a href=${link("house", "standard")} aria-current=${at("standard")}>${say("house-standard")}</a>
      ${chosen ? html`<a href=${link("house")}>${say("house-keeping")}</a>` : null}
      <a href=${link("survey", "rooms")}>${say("house-rooms")}</a>
    </p>`;
  return html`<section aria-labelledby="the-house">
    <h2 id="the-house">${house.name}</h2>
    ${house.rooms.length > MANY ? html`${onward}${rooms}<${Cautions} cautions=${cautions} />` : html`${rooms}<${Cautions} cautions=${cautions} />${onward}`}
    <${Aside} house=${house} />
    <${NameAndYear} house=${house} />
  </section>`;
}

/** @param {{house: any}} props */
function NameAndYear({ house }) {
  const { journal, act } = useNotebook();
  const year = house.built === null ? "" : String(house.built);
  const [name, setName] = useState(house.name);
  const [built, setBuilt] = useState(year);
  const ready = name.trim() && isYear(built) && (name !== house.name || built !== year);
  const take = () => act(() => strikeOut(journal, "house", { house: house.id }, "struck by hand"), say("strike.done", { what: house.name }));
  const save = () => act(() => restateHouse(journal, house, name.trim(), parseYear(built)), name);
  return html`<details class="more">
    <summary>${say("house-rename")}</summary>
    <${Field} label=${say("house-name")} value=${name} onInput=${setName} />
    <${Year} built=${built} onBuilt=${setBuilt} />
    <${Button} disabled=${!ready} onTouch=${save}>${say("save")}<//>
    <${Button} kind="plain" onTouch=${take}>${say("strike.what", { what: house.name })}<//>
  </details>`;
}

/**
 * The same thing said two ways on two devices: both are shown, and a person says which stands.
 * @param {{conflicts: any[]}} props
 */
function Conflicts({ conflicts }) {
  return html`<section aria-labelledby="two-ways">
    <h2 id="two-ways" class="wrong">${say("conflicts")}</h2>
    <p class="pencil">${say("conflicts.told")}</p>
    <ul class="rows">
      ${conflicts.map((one) => html`<${Conflict} conflict=${one} key=${`${one.of} ${one.name}`} />`)}
    </ul>
  </section>`;
}

/** @param {{conflict: any}} props */
function Conflict({ conflict }) {
  const { journal, act } = useNotebook();
  const name = SETTING_NAMES.get(conflict.name) ?? conflict.name;
  const choose = (/** @type {any} */ chosen) =>
    act(async () => {
      const others = conflict.choices.filter((one) => one !== chosen);
      for (const { entry } of others) await strike(journal, entry, "the other was chosen");
    }, say("conflicts-done", { name, value: chosen.shown }));
  return html`<li>
    <p>${name}</p>
    <div class="side-by-side">
      ${conflict.choices.map((one) => html`<${Button} onTouch=${() => choose(one)} key=${one.entry}>${one.shown}<//>`)}
    </div>
  </li>`;
}

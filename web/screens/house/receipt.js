// @ts-check
// A receipt against the plan; or what is just there, for any room of the house.
import { html, useState } from "../../controls/ui.js";
import { Button, Choice, Field } from "../../controls/controls.js";
import { go, link, stayHere } from "../../controls/route.js";
import { Asleep } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { sayLot } from "../../notebook/write.js";

const OTHER = "something else";

/** Today as a journal writes a day, by this device's own clock and place. */
function today() {
  const now = new Date();
  const two = (/** @type {number} */ part) => String(part).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** A lot that is there already, to be said again. @param {{house: any, room?: string}} props `room` is its id: the place's last word */
export function Lot({ house, room: id }) {
  const { answer } = useAnswer({ ask: "stock", house: house.id });
  const lot = answer?.lots.find((/** @type {any} */ one) => one.id === id);
  if (lot) return html`<${Receipt} house=${house} priced=${lot.price !== null || Boolean(lot.wrong)} lot=${lot} key=${id} />`;
  return html`<${Page} title="A receipt" tab="house" kind="form">
    ${answer ? html`<p>It is struck, or on another device still.</p>` : html`<${Asleep} what="Its figures" />`}
    <div class="low last-row"><${Button} onTouch=${() => go("house", "money")}>Back<//></div>
  <//>`;
}

/** @param {{house: any, priced: boolean, lot?: any}} props `priced`: it was bought, and not found on the shelf; `lot` to be said again */
export function Receipt({ house, priced, lot }) {
  const { room, journal, act } = useNotebook();
  const [of, setOf] = useState(lot?.of ?? (priced ? (room?.id ?? house.id) : house.id));
  const [thing, setThing] = useState(lot ? (lot.article ?? lot.called) : "");
  const [said, setSaid] = useState(
    lot
      ? { name: lot.called, count: String(lot.count), price: lot.price ?? "", date: lot.date, note: lot.note }
      : { name: "", count: "1", price: "", date: priced ? today() : "", note: "" },
  );
  const put = (/** @type {object} */ change) => setSaid({ ...said, ...change });
  const { answer: list } = useAnswer(of === house.id ? null : { ask: "shopping", room: of });
  const { answer: stock } = useAnswer({ ask: "stock", house: house.id });
  const things = thingsOf(list, stock);
  const picked = things.find((one) => one.key === thing) ?? null;
  const sizes = picked?.sizes ?? [];
  const name = sizes.length || !picked ? said.name.trim() : picked.name;
  const ready = name && /^\d{1,4}$/.test(said.count) && (!priced || said.price.trim()) && /^(\d{4}-\d\d-\d\d)?$/.test(said.date);
  const back = priced ? "money" : "stock";
  const save = async () => {
    const stays = stayHere();
    const facts = { of, article: picked?.article ?? null, ...said, name, price: said.price.trim(), note: said.note.trim() };
    if ((await act(() => sayLot(journal, { id: lot?.id, ...facts }), `${said.count} ${name}`)) && stays()) go("house", back);
  };
  const places = [...house.rooms.map((/** @type {any} */ one) => [one.id, one.name]), [house.id, "any room"]];
  return html`<${Page} title=${priced ? "A receipt" : "On hand"} tab="house" kind="form">
    <${Choice} name="of" legend="For" choices=${places} value=${of} onPick=${setOf} />
    ${
      stock && (list || of === house.id)
        ? html`<${Choice} name="thing" legend="What" choices=${[...things.map((one) => [one.key, one.name]), [OTHER, OTHER]]} value=${thing || OTHER} onPick=${setThing} />`
        : html`<${Asleep} what="The things to choose of" />`
    }
    ${
      sizes.length
        ? html`<${Choice} name="size" legend="Which can" choices=${sizes.map((/** @type {string} */ size) => [size, size])} value=${said.name} onPick=${(size) => put({ name: size })} />`
        : picked
          ? null
          : html`<${Field} label="What it is" value=${said.name} onInput=${(text) => put({ name: text })} hint="as the plan calls it, or in your own words" />`
    }
    ${picked?.boards ? html`<p class="pencil">Which boards came is ticked off on <a href=${link("supplies")}>Supplies</a>.</p>` : null}
    <${Field} label="How many" value=${said.count} mode="numeric" onInput=${(count) => put({ count })} hint="rolls, cans, sheets, boards" />
    ${
      priced
        ? html`<${Field} label="Paid in all" value=${said.price} mode="decimal" onInput=${(price) => put({ price })} hint="dollars, such as 85.00" />
          <${Field} label="On" value=${said.date} onInput=${(date) => put({ date })} hint="year, month, day" />`
        : null
    }
    <${Field} label="Note" value=${said.note} onInput=${(note) => put({ note })} hint="its batch number, the shop" />
    <div class="low"><div class="last-row">
      <${Button} onTouch=${() => go("house", back)}>Back<//>
      <${Button} kind="main" disabled=${!ready} onTouch=${save}>Save<//>
    </div></div>
  <//>`;
}

/**
 * What may be bought: what the room's list names, and every article of the house.
 * @param {any} list @param {any} stock @returns {{key: string, name: string, article: string | null, sizes: string[], boards?: boolean}[]}
 */
function thingsOf(list, stock) {
  const articles = (stock?.articles ?? []).map((/** @type {any} */ one) => ({
    key: one.id,
    name: one.name,
    article: one.id,
    sizes: (one.settings["paint.cans"] ?? []).map((/** @type {any} */ can) => can.size),
  }));
  const known = new Set(articles.map((one) => one.key));
  const others = (list?.goods ?? []).filter((/** @type {any} */ good) => !known.has(good.of));
  return [...articles, ...others.map(({ name, sort }) => ({ key: name, name, article: null, sizes: [], boards: sort === "boards" }))];
}

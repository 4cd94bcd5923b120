// @ts-check
// A receipt against the plan; or what is just there, for any room of the house.
import { html, useState } from "../../controls/ui.js";
import { Button, Choice, Field } from "../../controls/controls.js";
import { go, link, stayHere } from "../../controls/route.js";
import { Asleep } from "../../frame/empty.js";
import { Page } from "../../frame/page.js";
import { useAnswer, useNotebook } from "../../notebook/notebook.js";
import { sayLot } from "../../notebook/write.js";
import { say, sayWith } from "../../words/words.js";

/** In place of a thing that is known: no id and no name of one. */
const OTHER = "-";

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
  return html`<${Page} title=${say("receipt")} tab="house" kind="form">
    ${answer ? html`<p>${say("house-gone")}</p>` : html`<${Asleep} what=${say("receipt-figures")} />`}
    <div class="low last-row"><${Button} onTouch=${() => go("house", "money")}>${say("back")}<//></div>
  <//>`;
}

/** @param {{house: any, priced: boolean, lot?: any}} props `priced`: it was bought, and not found on the shelf; `lot` to be said again */
export function Receipt({ house, priced, lot }) {
  const { room, journal, act } = useNotebook();
  const [of, setOf] = useState(lot?.of ?? (priced ? (room?.id ?? house.id) : house.id));
  const [thing, setThing] = useState(lot ? (lot.article ?? lot.called) : "");
  const fresh = { called: "", count: "1", price: "", date: priced ? today() : "", note: "" };
  const { called, count, price, date, note } = lot ?? fresh;
  const [said, setSaid] = useState({ name: called, count: String(count), price: price ?? "", date, note });
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
    if ((await act(() => sayLot(journal, { id: lot?.id, ...facts }), say("receipt-done", { count: said.count, name }))) && stays()) go("house", back);
  };
  const supplies = html`<a href=${link("supplies")}>${say("screen-supplies")}</a>`;
  const places = [...house.rooms.map((/** @type {any} */ one) => [one.id, one.name]), [house.id, say("receipt-any-room")]];
  return html`<${Page} title=${say(priced ? "receipt" : "stock")} tab="house" kind="form">
    <${Choice} name="of" legend=${say("receipt-for")} choices=${places} value=${of} onPick=${setOf} />
    ${
      stock && (list || of === house.id)
        ? html`<${Choice} name="thing" legend=${say("receipt-thing")} value=${thing || OTHER} onPick=${setThing}
          choices=${[...things.map((one) => [one.key, one.shown]), [OTHER, say("receipt-thing.other")]]} />`
        : html`<${Asleep} what=${say("receipt-things")} />`
    }
    ${
      sizes.length
        ? html`<${Choice} name="size" legend=${say("receipt-can")} value=${said.name} onPick=${(size) => put({ name: size })}
          choices=${sizes.map((/** @type {string} */ size) => [size, size])} />`
        : null
    }
    ${
      picked
        ? null
        : html`<${Field} label=${say("receipt-name")} value=${said.name} onInput=${(text) => put({ name: text })}
          hint=${say("receipt-name.hint")} />`
    }
    ${picked?.boards ? html`<p class="pencil">${sayWith("receipt-boards", { supplies })}</p>` : null}
    <${Field} label=${say("receipt-count")} value=${said.count} mode="numeric" onInput=${(count) => put({ count })}
      hint=${say("receipt-count.hint")} />
    ${
      priced
        ? html`<${Field} label=${say("receipt-price")} value=${said.price} mode="decimal" onInput=${(price) => put({ price })}
            hint=${say("receipt-price.hint")} />
          <${Field} label=${say("receipt-date")} value=${said.date} onInput=${(date) => put({ date })} hint=${say("receipt-date.hint")} />`
        : null
    }
    <${Field} label=${say("receipt-note")} value=${said.note} onInput=${(note) => put({ note })} hint=${say("receipt-note.hint")} />
    <div class="low"><div class="last-row">
      <${Button} onTouch=${() => go("house", back)}>${say("back")}<//>
      <${Button} kind="main" disabled=${!ready} onTouch=${save}>${say("save")}<//>
    </div></div>
  <//>`;
}

/**
 * What may be bought: what the room's list names, and every article of the house.
 * @param {any} list @param {any} stock @returns {{key: string, name: string, shown: string, article: string | null, sizes: string[], boards?: boolean}[]}
 */
function thingsOf(list, stock) {
  const articles = (stock?.articles ?? []).map((/** @type {any} */ one) => ({
    key: one.id,
    name: one.name,
    shown: one.name,
    article: one.id,
    sizes: (one.settings["paint.cans"] ?? []).map((/** @type {any} */ can) => can.size),
  }));
  const known = new Set(articles.map((one) => one.key));
  const others = (list?.goods ?? []).filter((/** @type {any} */ good) => !known.has(good.of));
  return [...articles, ...others.map(({ name, name_shown, sort }) => ({ key: name, name, shown: name_shown, article: null, sizes: [], boards: sort === "boards" }))];
}

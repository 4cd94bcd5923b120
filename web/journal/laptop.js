// @ts-check
// The way to the laptop: every call goes with this device's token, where it has one. The laptop's own page has none and
// needs none.

const TOKEN = "scantling token";

/** Its origin; nothing where the page came from there, "none" where there is none. */
const { laptop: origin = "" } = document.documentElement.dataset;

/** Whether there is a laptop to share with; without one the notebook travels by file. */
export const hasLaptop = origin !== "none";

/** The code that this page was opened with, if any. */
let brought = "";

/** This device's token where the browser would not keep it: it is good until the page closes. */
let unkept = "";

function token() {
  try {
    return localStorage.getItem(TOKEN) ?? unkept;
  } catch {
    return unkept; // A browser may refuse even to be asked, and the laptop's own page needs no token.
  }
}

/** @param {string} fresh */
function keepToken(fresh) {
  unkept = fresh;
  try {
    localStorage.setItem(TOKEN, fresh);
  } catch {
    // The code is used up already: it must be good for what is open.
  }
}

/** How it is reached: its origin, and this device's token. */
export const wayToLaptop = () => ({ origin, token: token() });

/** @type {typeof fetch} */
export const askLaptop = (path, init = {}) => {
  const headers = new Headers(init.headers);
  if (token()) headers.set("Authorization", `Bearer ${token()}`);
  return fetch(origin + path, { ...init, headers });
};

/**
 * Takes the code out of an address such as "#pair=ABCD-EFGH", so that it stays in no history and no bookmark.
 * @returns {boolean} whether there was one
 */
export function takeCode() {
  const found = /^#pair=([\w-]{1,40})$/.exec(location.hash);
  if (!found) return false;
  brought = found[1] ?? "";
  history.replaceState(null, "", "#/house");
  return true;
}

/** The code that the page was opened with. */
export const codeBrought = () => brought;

/**
 * What the laptop answers, or an Error with its own sentence, or a key in place of one. `status` is 0 when nobody answered.
 * @param {string} method @param {string} path @param {object} [said] @returns {Promise<any>}
 */
export async function callLaptop(method, path, said) {
  if (!hasLaptop) throw Object.assign(new Error("laptop-none"), { status: 0 });
  const body = said && { body: JSON.stringify(said), headers: { "Content-Type": "application/json" } };
  const reply = await askLaptop(path, { method, ...body, redirect: "error" }).catch(() => null);
  if (!reply) throw Object.assign(new Error("laptop-no-answer"), { status: 0 });
  const answer = await reply.json().catch(() => null);
  if (reply.ok && answer) return answer;
  const { status } = reply;
  if (answer?.error?.message) throw Object.assign(new Error(answer.error.message), { status });
  throw Object.assign(new Error(), { status, key: "laptop-answered.sentence", values: { status: String(status) } });
}

/** Lets this device in by a code that the laptop shows. @param {string} code @param {string} name */
export async function pair(code, name) {
  keepToken((await callLaptop("POST", "/api/devices", { code, name })).token);
  brought = "";
}

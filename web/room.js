// @ts-check
// Room on this device: how much is free, and what gives way when readings or photos want it.

/** A browser that does not tell is believed to have some. @param {number} bytes @returns {Promise<boolean>} */
export async function isFree(bytes) {
  const { quota, usage = 0 } = (await navigator.storage?.estimate?.().catch(() => null)) ?? {};
  return quota === undefined || quota - usage >= bytes;
}

/** Drops what the engine keeps for speed alone: whether there was any. @returns {Promise<boolean>} */
export async function makeRoom() {
  const names = (await globalThis.caches?.keys().catch(() => [])) ?? [];
  const spare = names.filter((name) => name.startsWith("snapshot-"));
  await Promise.all(spare.map((name) => caches.delete(name)));
  return spare.length > 0;
}

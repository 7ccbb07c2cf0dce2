// The browser's own database (IndexedDB) of what was entered on this device. An entry lies under job, space, procedure,
// kind, step and name, all texts. What was to be done, the steps of a procedure, lies beside them under [0, procedure],
// so that a record can be made where the page of the procedure is not open.

const databaseName = () => `crew-record ${new URL(top || "./", location.href).pathname}`;
/** @type {Promise<IDBDatabase> | null} */
let opened = null;

function database() {
  const opening = opened ??= new Promise((done, failed) => {
    if (!window.indexedDB) throw Object.assign(new Error("no database"), { name: "Absent" });
    const asked = indexedDB.open(databaseName(), 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore("items");
    asked.onerror = () => failed(asked.error);
    asked.onsuccess = () => {
      const base = asked.result;
      base.onclose = base.onversionchange = () => {
        base.close();
        opened = null;
      };
      done(base);
    };
  });
  opening.catch(() => (opened = null));
  return opening;
}

/** What lies under the keys of a range. */
async function readAll(range) {
  const base = await database();
  return new Promise((done, failed) => {
    const asked = base.transaction("items").objectStore("items").getAll(range);
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => failed(asked.error);
  });
}

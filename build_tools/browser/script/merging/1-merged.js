// Records of several files as one list, as the page of records shows them.

/** Records of the same work as one: of each entry the latest, the steps of the latest edition. */
function merged(records) {
  const works = new Map();
  for (const record of records) {
    const key = JSON.stringify([record.job.id, record.space.id, record.procedure.id]);
    const before = works.get(key);
    if (!before) {
      works.set(key, { ...record, items: [...record.items] });
      continue;
    }
    const isLater = record.procedure.revision > before.procedure.revision || (record.procedure.revision === before.procedure.revision && record.taken > before.taken);
    const entries = new Map(before.items.map((one) => [entryKey(one), one]));
    for (const one of record.items) if (!(entries.get(entryKey(one))?.at >= one.at)) entries.set(entryKey(one), one);
    works.set(key, { ...(isLater ? record : before), items: [...entries.values()] });
  }
  const order = ({ job, space, procedure }) => [job.title, space.title, procedure.title, procedure.id].join("\u0000");
  return [...works.values()].sort((a, b) => (order(a) < order(b) ? -1 : order(a) > order(b) ? 1 : 0));
}

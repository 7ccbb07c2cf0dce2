// What lies on this device, of every job and procedure, and the way to take it out as one file.

/** The entries begin with a text, what a procedure asks for with a figure. */
const ENTRIES = [""];

const onDevice = document.querySelector("[data-device]");

/** Where each procedure stands in this book: no address comes from what was entered or handed over. */
const addresses = new Map(Object.entries(JSON.parse(document.querySelector("#crew-addresses").textContent)));

/** The records of everything that was entered here. */
async function deviceRecords() {
  const [entries, procedures] = await Promise.all([readAll(IDBKeyRange.lowerBound(ENTRIES)), readAll(IDBKeyRange.upperBound(ENTRIES, true))]);
  const { jobs } = await placesOf(entries);
  const asked = new Map(procedures.map((one) => [one.procedure, one]));
  const works = new Map();
  for (const entry of entries) {
    const key = JSON.stringify([entry.job, entry.space, entry.procedure]);
    works.set(key, [...(works.get(key) ?? []), entry]);
  }
  const taken = new Date().toISOString();
  return merged([...works.values()].map((items) => {
    const { job: jobId, space, procedure: id, revision } = items[0];
    const job = jobs.find((one) => one.id === jobId);
    const about = asked.get(id) ?? { title: id, revision, steps: [] };
    return {
      format: FORMAT, version: 1, taken,
      job: { id: jobId, title: job?.title ?? jobId }, space: { id: space, title: job?.spaces.find((one) => one.id === space)?.title ?? space },
      procedure: { id, title: about.title, revision: about.revision }, steps: about.steps,
      items: items.map(entryOf).filter(Boolean).sort((a, b) => (a.at < b.at ? -1 : 1)),
      page: addresses.has(id) && `${addresses.get(id)}?${new URLSearchParams({ job: jobId, space })}`,
    };
  }));
}

/** The titles of jobs and spaces, where an entry has a job. */
function placesOf(entries) {
  if (!entries.some(({ job }) => job)) return { jobs: [] };
  return new Promise((done) => {
    const script = make("script", { src: "assets/script/places.js" });
    script.onload = script.onerror = () => done(window.crewPlaces ?? { jobs: [] });
    document.head.append(script);
  });
}

async function showDevice() {
  let works;
  try {
    // Where all without a job was moved to one, nothing lies there.
    works = (await deviceRecords()).filter(({ job, items }) => job.id || items.some((one) => one.done || one.passed || one.text));
  } catch {
    return onDevice.replaceChildren(make("p", {}, say.nothing_kept));
  }
  if (!works.length) return onDevice.replaceChildren(make("p", {}, say.nothing_here));
  const groups = byJob(works);
  const all = groups.length > 1 ? [make("p", {}, takeOut(works, say.take_all_out, ""))] : [];
  onDevice.replaceChildren(...all, ...groups.map((ones) => jobPart(ones, make("p", {}, takeOut(ones, say.take_job_out, ones[0].job.id || "no-job")))), make("div", { class: "said", role: "status" }));
}

/** A button that hands these records out as one file. */
function takeOut(works, words, of) {
  return button(words, () => {
    const name = handOutRecords(works.map(({ page, ...record }) => record), "records", of, new Date().toISOString().slice(0, 10));
    onDevice.querySelector(".said").replaceChildren(make("p", {}, fill(say.taken_out, { name })));
  }, { class: "act" });
}

addEventListener("pageshow", ({ persisted }) => persisted && showDevice());

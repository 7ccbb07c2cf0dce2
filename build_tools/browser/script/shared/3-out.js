// Handing something out as a file of the browser's own: nothing is sent anywhere.

/** Records as a file, named by what they are of; gives its name. */
function handOutRecords(records, ...parts) {
  const name = `${parts.filter(Boolean).join("-").replace(/[^\w-]+/g, "-")}.json`;
  handOut(name, `${JSON.stringify(records, null, 1)}\n`, "application/json");
  return name;
}

function handOut(name, text, type) {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

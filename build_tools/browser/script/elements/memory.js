/** A browser may forbid a page to remember something, or have no room; then it holds for this page alone. */
const memory = {};
function remembered(name) {
  try {
    return memory[name] ?? localStorage.getItem(name);
  } catch {
    return null;
  }
}
function remember(name, value) {
  try {
    localStorage.setItem(name, value);
    delete memory[name];
  } catch {
    memory[name] = value;
  }
}

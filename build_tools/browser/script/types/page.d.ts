// What the scripts of the pages share, as types: read by the TypeScript compiler in the tests, never published.

/** A quantity as calculators name it: length, area, slope, choice, rows, … */
type Quantity = string;

interface Choice {
  name: string;
  label: string;
}

/** An input of a calculator, or a column of one. Figures are in the unit of the inside; labels and choices are the page's. */
interface Input {
  name: string;
  label: string;
  quantity: Quantity;
  unit: string;
  default: any;
  least: number | null;
  most: number | null;
  usual: [number, number] | null;
  rule: { side: string; limit: number; source: string; weight: string } | null;
  choices: Choice[];
  /** The two ways of a figure that has no sign; none for any other. */
  ways: string[];
  columns: Input[];
}

interface Output {
  name: string;
  label: string;
  quantity: Quantity;
  unit: string;
  step: number;
  rounds: string;
  ways: string[];
  columns: Output[];
}

interface Declaration {
  name: string;
  inputs: Input[];
  outputs: Output[];
}

/** What a calculator answers: its outputs by name, what is to be watched, and the lines of its working. */
interface Answer {
  cautions: string[];
  working: string[];
  [output: string]: any;
}

/** What was read, or the input that is refused and why. */
interface Read {
  value?: any;
  input?: string;
  message?: string;
}

/** An output as text; one of rows has its cells by the names of the columns. */
interface Shown {
  name: string;
  label: string;
  text: string;
  rows?: Record<string, string>[];
}

/** A drawing as numbers, of the values and the answer that it shows. */
type Draws = (values: Record<string, any>, answer: Answer) => any;

/** The compiled calculators: the global of crew.js. Nothing that a person types makes it throw. */
interface Crew {
  calculators: Record<string, { declaration: Declaration; call: (values: Record<string, any>) => Answer; draws?: () => Draws }>;
  add(declaration: any, answers: (...values: any[]) => Answer, more: Record<string, Function>, draws?: () => Draws): void;
  read(text: string, quantity: Quantity, unit: string): any;
  why(text: string, quantity: Quantity, unit: string): string;
  write(value: number, quantity: Quantity, unit: string, step?: number, rounds?: string): string;
  exactly(value: any, quantity: Quantity, unit: string): string;
  asGiven(item: Input, value: any): string;
  unit(quantity: Quantity, unit: string, metric: boolean): string;
  readInput(name: string, input: string, given: any, metric?: boolean): Read;
  complete(name: string, values: Record<string, any>): Record<string, any>;
  run(name: string, values: Record<string, any>, metric: boolean): { answer?: any; input?: string; message?: string };
  shown(name: string, answer: Answer, metric: boolean): Shown[];
  /** What files hand over, in an order that the bundle knows. */
  given?: any[];
  // Of draw.js.
  drawing?: any;
  draw?: any;
}

/** A job with its spaces, as places.js names them. */
interface Place {
  id: string;
  title: string;
  spaces?: Place[];
}

interface Places {
  jobs: Place[];
  people: string[];
}

/** An entry of the record: a tick, a reading, a look at a hold point or a note. A later one of the same name counts. */
interface Item {
  job: string;
  space: string;
  procedure: string;
  kind: "tick" | "reading" | "hold" | "note";
  step: string;
  name: string;
  /** When, in UTC to the millisecond. */
  at: string;
  by: string;
  revision: number;
  print: string;
  [given: string]: any;
}

/** A step of the page, or the checks at its end, with what is entered there. */
interface Step {
  id: string;
  print: string;
  title: string;
  box: HTMLElement;
  hold: any;
  measures: any[];
  /** Show what is kept. */
  show: () => void;
  /** Another place is shown: what is open ends. */
  leave: () => void;
  [more: string]: any;
}

/** What the script of the steps hands to those that come later: the walk, the record, entries of before. */
interface OnSite {
  WALK: string;
  top: string;
  root: HTMLElement;
  about: { procedure: string; revision: number; title: string };
  /** Where this is: a job, a space of it, and who does the work. */
  at: { job: string; space: string; who: string };
  steps: Step[];
  items: Map<string, Item>;
  make: (tag: string, given?: Record<string, any>, ...inside: any[]) => any;
  button: (words: any, does: (event: Event) => any, given?: Record<string, any>) => any;
  fill: (words: string, given: Record<string, any>) => string;
  get: (kind: Item["kind"], step: string, name?: string) => Item | undefined;
  keep: (list: Item[], procedure?: any) => Promise<void>;
  asked: () => any;
  isFilled: (item: Item) => boolean;
  emptied: (item: Item) => Item;
  nameOf: (item: Item) => string;
  walkKey: () => string;
  whenWords: (iso: string) => string;
  holdIsOpen: (step: Step) => boolean;
  setPlace: (job: string, space: string, who: string) => Promise<void>;
  placeWords: () => string;
  titleIn: (list: Place[] | undefined, id: string) => string;
  places: () => Promise<Places>;
  refresh: () => Promise<void>;
  showAll: () => void;
  /** Where panels open, and what is said of entries that were made before a job was chosen. */
  room: HTMLElement;
  before: HTMLElement;
  tellBefore: (words?: string, ...acts: HTMLElement[]) => void;
  /** Of the walk, while somebody walks. */
  walking?: boolean;
  settle?: (() => void) | null;
  lock?: WakeLockSentinel | null;
}

/** What the pieces of the search use: an entry is [address, title, other names, weight, text, emergency phrases]. */
type Entry = [string, string, string, number, string, string[]?];

interface Window {
  crew?: Crew;
  crewFind?: (typed?: string) => void;
  crewSearch?: any;
  crewWalk?: (own: OnSite) => void;
  crewRecord?: (own: OnSite) => Record<string, () => Promise<void>>;
  crewPlaces?: Places;
  crewEnter?: {
    readText: (data: any, text: string, unit: string) => { value?: any; why?: string };
    outsideWords: (data: any, value: number, unit: string) => string;
    taken: (data: any, text: string, way: string, unit: string) => { text: string; value: any; why?: string };
    lookOf: (hold: any, isSure: boolean) => Record<string, any> | undefined;
  };
  crewBefore?: (own: OnSite, place: OnSite["at"], all: Item[]) => Promise<void>;
}

/** What stands on a page is put there by its template: a script takes it as it is. */
interface ParentNode {
  querySelector(selectors: string): any;
  querySelectorAll(selectors: string): NodeListOf<any>;
}

interface Element {
  closest(selectors: string): any;
}

interface Document {
  readonly wasDiscarded?: boolean;
}

interface Navigator {
  readonly connection?: { saveData: boolean };
}

interface DocumentEventMap {
  "crew-units": CustomEvent<boolean>;
  "crew-reading": CustomEvent<{ name: string; isNew: boolean }>;
}

/** The words of a script, which stand in it as {WORDS}. */
declare const crewWords: Record<string, string>;
declare const crew: Crew;

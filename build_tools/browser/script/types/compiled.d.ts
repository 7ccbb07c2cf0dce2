// The compiled functions of calculators/ that core.js and draw.js call, by the names that the bundle gives them.

declare function answering$read_one(item: Input, given: string, name: string, label: string, metric: boolean): any;
declare function answering$filled(inputs: Input[], values: Record<string, any>): Record<string, any>;
declare function answering$keep_limits(inputs: Input[], values: Record<string, any>, metric: boolean): void;
declare function answering$with_cautions(inputs: Input[], values: Record<string, any>, answer: Answer, metric: boolean): Answer;
declare function answering$shown_lines(outputs: Output[], answer: Answer, metric: boolean): Shown[];
declare function limits$as_given(item: Input, value: any, metric: boolean): string;
declare function metric$unit_in(quantity: Quantity, unit: string, metric: boolean): string;
declare function reading$read(text: string, quantity: Quantity, unit: string): any;
declare function writing_units$exactly(value: any, quantity: Quantity, unit: string): string;
declare function writing_units$write(value: number, quantity: Quantity, unit: string, step: number, rounds: string): string;

/** A mark of a drawing that was laid out: its kind, place and look, all as they stand in the SVG. */
type Mark = Record<string, any>;

interface LaidOut {
  box: string;
  hatches: { name: string; width: number; height: number; d: string }[];
  marks: Mark[];
  title: string;
  alt: string;
}

declare function drawing_layout$lay_out(sheet: any): LaidOut;

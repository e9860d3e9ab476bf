import { type ThetaSlopes, VIEW_AXES } from './linear-views.ts';

/** What is left unknown of theta: H⁻¹, row by row. */
export interface ThetaDoubt {
  readonly inverse: Float64Array;
  readonly count: number;
}

/** How axes go with theta, in the columns that are not empty: J* − W J. */
export class Sensitivity {
  readonly columns: number[] = [];
  private readonly rows: number;
  private readonly placeOf: Int32Array;
  private readonly values: Float64Array;

  /** @param room how many columns are filled at most */
  constructor(rows: number, unknowns: number, room: number) {
    this.rows = rows;
    this.placeOf = new Int32Array(unknowns).fill(-1);
    this.values = new Float64Array(rows * Math.min(room, unknowns));
  }

  /** Adds a view's slopes, `times`, to the three rows from `row` on. */
  add({ columns, slopes }: ThetaSlopes, side: number, times: number, row: number): void {
    const count = columns.length;
    for (let axis = 0; axis < VIEW_AXES; axis++) {
      const from = (side * VIEW_AXES + axis) * count;
      for (let c = 0; c < count; c++) this.values[this.at(columns[c]!) + row + axis]! += times * slopes[from + c]!;
    }
  }

  private at(column: number): number {
    let place = this.placeOf[column]!;
    if (place < 0) {
      place = this.columns.push(column) - 1;
      this.placeOf[column] = place;
    }
    return place * this.rows;
  }

  /** With J these rows, J H⁻¹ Jᵀ: what the doubt of theta makes of them. */
  covariance({ inverse, count }: ThetaDoubt): Float64Array {
    const { rows, columns, values } = this;
    const sum = new Float64Array(rows * rows);
    const product = new Float64Array(rows);
    for (let one = 0; one < columns.length; one++) {
      const from = columns[one]! * count;
      product.fill(0);
      for (let other = 0; other < columns.length; other++) {
        const h = inverse[from + columns[other]!]!;
        const at = other * rows;
        for (let row = 0; row < rows; row++) product[row]! += h * values[at + row]!;
      }
      const at = one * rows;
      for (let i = 0; i < rows; i++) {
        const value = values[at + i]!;
        for (let j = 0; j <= i; j++) sum[i * rows + j]! += value * product[j]!;
      }
    }
    for (let i = 0; i < rows; i++) for (let j = 0; j < i; j++) sum[j * rows + i] = sum[i * rows + j]!;
    return sum;
  }
}

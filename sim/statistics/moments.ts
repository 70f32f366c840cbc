/** The three numbers that moments travel as, for instance from a worker. `squares` is Σ(x − mean)². */
export interface MomentSums {
  count: number;
  mean: number;
  squares: number;
}

/**
 * Mean and standard deviation of numbers that come in batches. Adding the same batches in the same order gives the same
 * bits; a batch is first summed by itself about its own mean, so a large offset costs no digits.
 *
 * Source: T. F. Chan, G. H. Golub and R. J. LeVeque, "Algorithms for computing the sample variance", Amer. Statist. 37
 * (1983) 242–247: the corrected two-pass algorithm (1.7) within a batch, the pairwise update (2.1) between batches.
 */
export class Moments implements MomentSums {
  count: number;
  mean: number;
  squares: number;

  constructor(sums: Readonly<MomentSums> = { count: 0, mean: 0, squares: 0 }) {
    this.count = sums.count;
    this.mean = sums.mean;
    this.squares = sums.squares;
  }

  /** Adds `values[from]` to `values[to − 1]`. */
  add(values: ArrayLike<number>, from = 0, to = values.length): this {
    const count = to - from;
    if (count <= 0) return this;
    const offset = values[from]!;
    let sum = 0;
    for (let i = from; i < to; i++) sum += values[i]! - offset;
    const mean = offset + sum / count;
    let squares = 0;
    let rest = 0;
    for (let i = from; i < to; i++) {
      const deviation = values[i]! - mean;
      squares += deviation * deviation;
      rest += deviation;
    }
    return this.merge({ count, mean, squares: squares - (rest * rest) / count });
  }

  /** Takes in the numbers that another set of moments stands for. */
  merge(other: Readonly<MomentSums>): this {
    if (other.count === 0) return this;
    if (this.count === 0) {
      this.count = other.count;
      this.mean = other.mean;
      this.squares = other.squares;
      return this;
    }
    const count = this.count + other.count;
    const difference = other.mean - this.mean;
    this.squares += other.squares + difference * difference * ((this.count * other.count) / count);
    this.mean += difference * (other.count / count);
    this.count = count;
    return this;
  }

  /** Sample variance (divisor count − 1); NaN for fewer than two numbers. */
  get variance(): number {
    return this.count < 2 ? Number.NaN : this.squares / (this.count - 1);
  }

  /** Sample standard deviation; NaN for fewer than two numbers. */
  get sd(): number {
    return Math.sqrt(this.variance);
  }

  /** Standard error of the mean; NaN for fewer than two numbers. */
  get standardError(): number {
    return this.sd / Math.sqrt(this.count);
  }
}

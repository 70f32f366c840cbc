/** The part of the `quadprog` package that the tests use; arrays count from 1. */
declare module 'quadprog' {
  export function solveQP(
    Dmat: number[][],
    dvec: number[],
    Amat: number[][],
    bvec: number[],
    meq?: number,
  ): { solution: number[]; message: string };
}

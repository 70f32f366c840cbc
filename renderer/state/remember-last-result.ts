/** The same as `work`, but asked the same again it gives what it gave last: several panels ask for one thing. */
export function rememberLastResult<Args extends readonly unknown[], Result>(
  work: (...args: Args) => Result,
): (...args: Args) => Result {
  let last: { args: Args; result: Result } | null = null;
  return (...args) => {
    if (!last?.args.every((arg, i) => Object.is(arg, args[i])) || last.args.length !== args.length) {
      last = { args, result: work(...args) };
    }
    return last.result;
  };
}

const STAND_IN = new URL('./electron.mjs', import.meta.url).href;

/**
 * @param {string} specifier
 * @param {unknown} context
 * @param {(specifier: string, context: unknown) => unknown} next
 */
export function resolve(specifier, context, next) {
  return specifier === 'electron' ? { url: STAND_IN, shortCircuit: true } : next(specifier, context);
}

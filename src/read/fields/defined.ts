/** The same without keys whose value is undefined: the models tell "left out" from nothing by the key alone. */
export function defined<T extends object>(given: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]: Exclude<T[K], undefined>;
  };
}

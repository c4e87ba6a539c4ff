/** Keys whose value may be undefined may be missing instead. */
type Defined<T> = { readonly [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & {
  readonly [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
};

/** The same without keys whose value is undefined: the models tell "left out" from nothing by the key alone. */
export function defined<const T extends object>(given: T): Defined<T> {
  return Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined)) as Defined<T>;
}

/** Made when it is first asked for, and kept: shapes of a block of which most often the first one fits. */
export function once<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

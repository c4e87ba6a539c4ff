import { signal } from '@preact/signals';

/** Whether the screen is kept awake; undefined while it is not known. */
export const awake = signal<boolean | undefined>(undefined);

/** Keeps the screen awake until what it gives back is called; asks again whenever the page comes back to the front. */
export function keepAwake(): () => void {
  let lock: WakeLockSentinel | undefined;
  let ended = false;
  const ask = async (): Promise<void> => {
    if (ended || document.visibilityState !== 'visible') return;
    try {
      const next = await navigator.wakeLock.request('screen');
      if (ended) return next.release();
      lock = next;
      awake.value = true;
      next.addEventListener('release', () => {
        if (!ended) awake.value = false;
      });
    } catch {
      awake.value = false;
    }
  };
  const onVisible = (): void => void ask();
  document.addEventListener('visibilitychange', onVisible);
  void ask();
  return () => {
    ended = true;
    document.removeEventListener('visibilitychange', onVisible);
    void lock?.release();
    awake.value = undefined;
  };
}

import { useSignal } from '@preact/signals';
import { type ComponentChild, h } from 'preact';
import { piece } from '../state/piece.ts';

/** From what a size follows, one tap away. */
export function Why({ sizes, label }: { readonly sizes: readonly string[]; readonly label: string }): ComponentChild {
  const open = useSignal(false);
  const found = sizes.flatMap((name) => piece.value?.why.filter(({ size }) => size === name) ?? []);
  if (found.length === 0) return null;
  return h('span', { class: 'why' }, [
    h(
      'button',
      {
        key: 'button',
        type: 'button',
        'aria-expanded': open.value,
        'aria-label': `${label}: what it follows from`,
        onClick: () => {
          open.value = !open.value;
        },
      },
      'why',
    ),
    open.value
      ? h(
          'span',
          { key: 'sum', class: 'sum', role: 'note' },
          found.map(({ size, what, sum, rules }) =>
            h('span', { key: size }, [
              `${what} = ${sum === '' ? 'the rest' : sum}`,
              rules.length === 0 ? '' : `; ${rules.map((rule) => rule.what).join(', ')}`,
            ]),
          ),
        )
      : null,
  ]);
}

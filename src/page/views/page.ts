import { type ComponentChild, h } from 'preact';
import { Cutter } from '../cutter/cutter.ts';
import { Day } from '../day/day.ts';
import { Form } from '../form/form.ts';
import { Out } from '../out/out.ts';
import { Picture } from '../picture/picture.ts';
import { ShopPlace } from '../shop/shop-place.ts';
import { open } from '../state/piece.ts';
import { place, saying, textShown, trouble } from '../state/place.ts';
import { Head } from './head.ts';
import { Start } from './start.ts';
import { TextView } from './text.ts';

export function Page(): ComponentChild {
  return h('div', { class: place.value === 'cutter' ? 'page at-cutter' : 'page' }, [
    h(Head, { key: 'head' }),
    h(TroubleBar, { key: 'trouble' }),
    h('p', { key: 'saying', class: 'saying', role: 'status' }, saying.value),
    h(Here, { key: 'here' }),
  ]);
}

function Here(): ComponentChild {
  if (place.value === 'cutter') return h(Cutter, {});
  if (place.value === 'day') return h(Day, {});
  if (place.value === 'shop' && open.value !== undefined) {
    return h('main', { class: `bench shop${textShown.value ? ' with-text' : ''}` }, [
      h(ShopPlace, { key: open.value.id }),
      textShown.value ? h(TextView, { key: 'text' }) : null,
    ]);
  }
  if (open.value === undefined || place.value === 'pieces') return h(Start, {});
  return h('main', { class: `bench ${place.value}${textShown.value ? ' with-text' : ''}` }, [
    h(Picture, { key: 'picture' }),
    place.value === 'out' ? h(Out, { key: `out ${open.value.id}` }) : h(Form, { key: `form ${open.value.id}` }),
    textShown.value ? h(TextView, { key: 'text' }) : null,
  ]);
}

function TroubleBar(): ComponentChild {
  const now = trouble.value;
  if (now === undefined || (now.of !== undefined && now.of !== open.value?.id)) return null;
  return h('div', { class: 'trouble', role: 'alert' }, [
    h('p', { key: 'words' }, now.words),
    h('span', { key: 'ways', class: 'buttons' }, [
      ...now.ways.map(({ words, go }) => h('button', { key: words, type: 'button', onClick: go }, words)),
      h('button', { key: 'close', type: 'button', onClick: () => (trouble.value = undefined) }, 'Put this away'),
    ]),
  ]);
}

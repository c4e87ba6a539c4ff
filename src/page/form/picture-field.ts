import { type ComponentChild, h } from 'preact';
import { takePicture } from '../files/take.ts';
import { edit } from '../state/edit.ts';
import { open, said } from '../state/piece.ts';
import { Told } from './told.ts';
import { plainText } from './typed.ts';

/** The artwork's picture, for the face and the proof. */
export function PictureField({ index }: { readonly index: number }): ComponentChild {
  const path = ['openings', index, 'picture'];
  const name = plainText(said(path));
  const here = name !== '' && open.value?.pictures[name] !== undefined;
  const id = `picture-${index}`;
  return h('div', { class: 'field choice' }, [
    h('label', { key: 'label', for: id }, 'Picture of the artwork (JPEG or PNG)'),
    h('input', {
      key: 'input',
      id,
      type: 'file',
      accept: 'image/jpeg,image/png',
      onChange: (event: Event) => {
        const input = event.currentTarget as HTMLInputElement;
        const [file] = input.files ?? [];
        // The same file, changed since, may be chosen again.
        input.value = '';
        if (file !== undefined) void takePicture(file, index);
      },
    }),
    name === ''
      ? null
      : h(
          'p',
          { key: 'name', class: 'note' },
          here ? name : `${name} is not on this page: drop its file here to see it.`,
        ),
    name === ''
      ? null
      : h(
          'button',
          { key: 'take', type: 'button', onClick: () => edit([{ path, value: undefined }], 'picture taken out') },
          'Take the picture out',
        ),
    h(Told, { key: 'told', path }),
  ]);
}

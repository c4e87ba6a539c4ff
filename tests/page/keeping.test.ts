import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { inBrowser, jobText, kept, noBrowser, outer, settled, start, wants } from './browser.ts';

const HERON = join(import.meta.dirname, '../../examples/heron');

describe.skipIf(noBrowser)(`keeping what was done${wants}`, () => {
  const openPage = inBrowser();

  test('undoes across a reload', async () => {
    const { page, context, expectQuiet } = await openPage();
    await start(page, /^Double mat/);
    await outer(page).fill('17 x 21');
    await page.getByLabel('Overlap', { exact: true }).fill('3/8');
    await kept(page);
    await page.waitForTimeout(400);
    await page.reload();
    await page.getByRole('button', { name: /^Double mat double\.yaml/ }).click();
    expect(await outer(page).inputValue()).toBe('17 x 21');
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await page.getByLabel('Overlap', { exact: true }).inputValue()).toBe('1/4');
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await outer(page).inputValue()).toBe('16 x 20');
    await expectQuiet();
    await context.close();
  });

  test('a full storage is told, with a way out, and loses nothing', async () => {
    const { page, context } = await openPage();
    await page.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('no room left', 'QuotaExceededError');
      };
    });
    await start(page, /^Double mat/);
    await outer(page).fill('17 x 21');
    await expect.poll(() => page.getByRole('alert').textContent()).toContain('no room left');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save to a file' }).click(),
    ]);
    expect(readFileSync((await download.path())!, 'utf8')).toBe(await jobText(page));
    await context.close();
  });

  test('several jobs that cannot be kept are told', async () => {
    const { page, context } = await openPage();
    await page.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('no room left', 'QuotaExceededError');
      };
    });
    const files = ['one.yaml', 'two.yaml'].map((name) => ({
      name,
      mimeType: 'application/yaml',
      buffer: Buffer.from('mat: {outer: 10 x 12}\n'),
    }));
    await page.locator('#files').setInputFiles(files);
    await expect.poll(() => page.getByRole('alert').textContent()).toContain('could not keep one.yaml');
    expect(await page.locator('.saying').textContent()).toBe('');
    await context.close();
  });

  test('a record that is broken, or of a later version, is told and left alone', async () => {
    const { page, context } = await openPage();
    await start(page, /^Double mat/);
    await outer(page).fill('17 x 21');
    await kept(page);
    const put = (): Promise<void> =>
      new Promise((resolve, reject) => {
        const request = indexedDB.open('matwright');
        request.onerror = () => reject(request.error);
        request.onsuccess = () => {
          const transaction = request.result.transaction('drafts', 'readwrite');
          transaction.objectStore('drafts').put({ id: 'later', format: 2, anything: true });
          transaction.oncomplete = () => resolve();
        };
      });
    await page.evaluate(put);
    await page.reload();
    await expect.poll(() => page.locator('.start .error').textContent()).toContain('1 of the pieces');
    expect(await page.locator('.drafts li').count()).toBe(1);
    await context.close();
  });

  test('files dropped: the shop, the job and its picture, which shows on the face', async () => {
    const { page, context, expectQuiet } = await openPage();
    const files = ['shop.yaml', 'job.yaml', 'heron.png'].map((name) => ({
      name,
      type: name.endsWith('png') ? 'image/png' : 'application/yaml',
      base64: readFileSync(join(HERON, name)).toString('base64'),
    }));
    await page.evaluate((all) => {
      const transfer = new DataTransfer();
      for (const { name, type, base64 } of all) {
        const bytes = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
        transfer.items.add(new File([bytes], name, { type }));
      }
      document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }));
    }, files);
    await page.locator('svg.face').waitFor();
    await settled(page);
    await expect.poll(() => page.locator('svg.face image').count()).toBe(1);
    expect(await page.locator('.swatches').count()).toBeGreaterThan(0);
    expect(await jobText(page)).toBe(readFileSync(join(HERON, 'job.yaml'), 'utf8'));
    await expectQuiet();
    await context.close();
  });

  test.each([
    ['a text of 300 KB', 'large.yaml', `title: Large\n${'# much\n'.repeat(45_000)}`, /256 KiB/u],
    [
      'a title full of markup',
      'markup.yaml',
      'title: "<img src=x onerror=alert(1)><script>alert(2)</script>"\nmat: {outer: 10 x 12}\nopenings: [{size: 6 x 8}]\n',
      undefined,
    ],
    ['no job at all', 'list.yaml', '- one\n- two\n', /map/u],
  ])('%s is taken as it is', async (_, name, text, told) => {
    const { page, context, expectQuiet } = await openPage();
    await page.locator('#files').setInputFiles({ name, mimeType: 'application/yaml', buffer: Buffer.from(text) });
    await settled(page);
    if (told === undefined) {
      await page.locator('svg.face').waitFor();
      expect(await page.getByRole('heading', { level: 1 }).textContent()).toContain('<img src=x');
      expect(await page.locator('img').count()).toBe(0);
      await page.getByRole('tab', { name: 'Back' }).click();
      await expect.poll(() => page.locator('.backs').textContent()).toContain('<script>');
    } else await expect.poll(() => page.locator('.told').first().textContent()).toMatch(told);
    await expectQuiet();
    await context.close();
  });

  test('markup in every word of a piece comes out as text, wherever it is shown', async () => {
    const { page, context, expectQuiet } = await openPage();
    const markup = '<img src=x onerror=document.title=1><script>document.title=2</script>&amp;';
    const words = (what: string): string => JSON.stringify(`${what} ${markup}`);
    const board = `{name: ${words('board')}, thickness: 1.4 mm}`;
    const text = `title: ${words('title')}
customer: ${words('customer')}
mat: {outer: 20 x 12, layers: [{board: ${board}}]}
openings: [{name: ${words('one')}, size: 6 x 8}, {name: ${words('other')}, size: 5 x 7}]
`;
    const none = async (where: string): Promise<void> => {
      expect(await page.locator('img, #page script').count(), where).toBe(0);
      expect(await page.title(), where).toBe('Matwright');
    };
    const tab = async (name: string, shown: string): Promise<void> => {
      await page.getByRole('tab', { name }).click();
      await expect
        .poll(() => page.locator(shown).allTextContents(), { timeout: 20_000 })
        .toEqual(expect.arrayContaining([expect.stringContaining('<img')]));
      await none(name);
    };
    await page
      .locator('#files')
      .setInputFiles({ name: 'job.yaml', mimeType: 'application/yaml', buffer: Buffer.from(text) });
    await page.locator('svg.face').waitFor();
    await page.getByText('All sizes in words').click();
    await expect.poll(() => page.locator('.described').textContent()).toContain(`one ${markup}`);
    expect(await page.locator('#which-opening').textContent()).toContain(`other ${markup}`);
    await none('Describe');
    await tab('Back', '.backs');
    await tab('Paper', '.pages');
    await tab('Boards', '.pages');
    await page.getByRole('button', { name: 'At the cutter' }).click();
    await page.locator('.step').waitFor();
    await page.getByRole('button', { name: 'All steps' }).click();
    expect(await page.locator('.steps').textContent()).toContain(`title ${markup}`);
    await none('At the cutter');
    await page.getByRole('button', { name: 'Describe' }).click();
    await page.getByText('Names, bench and paper').click();
    await page.getByLabel('Number of the job').fill('A-1');
    await expect.poll(() => page.locator('.kept').textContent()).toContain('kept in this browser');
    await page.getByRole('button', { name: 'The day', exact: true }).click();
    await page.getByRole('button', { name: `title ${markup}` }).waitFor();
    await page.getByRole('button', { name: 'Lay the blanks on sheets' }).click();
    await page.locator('.sheet-to-cut').first().waitFor({ timeout: 20_000 });
    expect(await page.locator('.sheet-to-cut').first().textContent()).toContain('<img');
    await none('The day');
    await expectQuiet();
    await context.close();
  });

  test('saves back to the file that was opened, where the browser lets it', async () => {
    const { page, context, expectQuiet } = await openPage();
    await page.evaluate((text) => {
      const written: string[] = [];
      const handle = {
        kind: 'file',
        name: 'mine.yaml',
        getFile: async () => new File([written.at(-1) ?? text], 'mine.yaml'),
        createWritable: async () => ({
          write: async (blob: Blob) => written.push(await blob.text()),
          close: async () => undefined,
        }),
      };
      Object.assign(globalThis, { showOpenFilePicker: async () => [handle], written });
    }, 'mat: {outer: 10 x 12}\nopenings: [{size: 6 x 8}]\n');
    await page.getByRole('button', { name: 'Open files' }).click();
    await page.locator('svg.face').waitFor();
    await outer(page).fill('11 x 12');
    await page.getByRole('button', { name: 'Save the job' }).click();
    await expect.poll(() => page.locator('.saying').textContent()).toContain('Saved into mine.yaml');
    const written = await page.evaluate(
      () => (globalThis as typeof globalThis & { readonly written: readonly string[] }).written,
    );
    expect(written).toEqual(['mat: {outer: 11 x 12}\nopenings: [{size: 6 x 8}]\n']);
    await expectQuiet();
    await context.close();
  });

  test('a folder dropped is looked through, with the folders in it', async () => {
    const { page, context, expectQuiet } = await openPage();
    await page.evaluate((text) => {
      const file = (name: string, words: string) => ({
        kind: 'file',
        name,
        getFile: async () => new File([words], name),
      });
      const folder = (name: string, all: readonly object[]) => ({
        kind: 'directory',
        name,
        values: async function* values() {
          yield* all;
        },
      });
      const inner = folder('deep', [file('deep.yaml', text), file('notes.txt', 'nothing of ours')]);
      const item = { kind: 'file', getAsFile: () => null, getAsFileSystemHandle: async () => folder('top', [inner]) };
      const event = new DragEvent('drop', { bubbles: true, cancelable: true });
      Object.defineProperty(event, 'dataTransfer', { value: { items: [item] } });
      document.body.dispatchEvent(event);
    }, 'title: Deep\nmat: {outer: 10 x 12}\nopenings: [{size: 6 x 8}]\n');
    await page.locator('svg.face').waitFor();
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Deep');
    expect(await page.getByRole('alert').count()).toBe(0);
    await expectQuiet();
    await context.close();
  });

  test('a file that is no text, or nothing of ours, is told', async () => {
    const { page, context, expectQuiet } = await openPage();
    const give = (name: string, bytes: readonly number[]) =>
      page.locator('#files').setInputFiles({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(bytes) });
    await give('odd.yaml', [0xff, 0xfe, 0x00]);
    await expect.poll(() => page.getByRole('alert').textContent()).toContain('no text in UTF-8');
    await give('notes.docx', [1, 2, 3]);
    await expect.poll(() => page.getByRole('alert').textContent()).toContain('neither a job');
    await expectQuiet();
    await context.close();
  });
});

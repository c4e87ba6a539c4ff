import { type DxfEntity, type DxfModel, dashParts, dashTags, dxfNumber, headerTags, Tags } from './model.ts';

/** Handles that other records point to; the others are numbered from `FREE` on. */
const H = {
  vport: '1',
  ltype: '2',
  layer: '3',
  style: '4',
  view: '5',
  ucs: '6',
  appid: '7',
  dimstyle: '8',
  blockRecord: '9',
  root: 'A',
  groups: 'B',
  model: 'C',
  paper: 'D',
  modelBegin: 'E',
  modelEnd: 'F',
  paperBegin: '10',
  paperEnd: '11',
  byBlock: '12',
  byLayer: '13',
  standard: '14',
  acad: '15',
} as const;
const FREE = 0x20;

/**
 * AC1015: LWPOLYLINE, and every table, block and object that the dialect demands, with handles and owners (Autodesk DXF
 * reference, 2000).
 */
export function r2000(model: DxfModel): string {
  let next = FREE;
  const handle = (): string => (next++).toString(16).toUpperCase();
  const body = new Tags();
  body.add(0, 'SECTION').add(2, 'CLASSES').add(0, 'ENDSEC');
  tables(body, model, handle);
  blocks(body);
  body.add(0, 'SECTION').add(2, 'ENTITIES');
  for (const entity of model.entities) entityTags(body, entity, handle());
  body.add(0, 'ENDSEC');
  objects(body);
  body.add(0, 'EOF');
  const head = new Tags();
  headerTags(head, model, 'AC1015', handle());
  return `${head}${body}`;
}

function tables(tags: Tags, model: DxfModel, handle: () => string): void {
  const table = (name: string, own: string, count: number): void => {
    tags.add(0, 'TABLE').add(2, name).add(5, own).add(330, 0).add(100, 'AcDbSymbolTable').add(70, count);
  };
  const record = (kind: string, own: string, owner: string, subclass: string, name: string): void => {
    tags.add(0, kind).add(5, own).add(330, owner).add(100, 'AcDbSymbolTableRecord').add(100, subclass).add(2, name);
  };
  const end = (): void => void tags.add(0, 'ENDTAB');
  tags.add(0, 'SECTION').add(2, 'TABLES');
  table('VPORT', H.vport, 0);
  end();
  table('LTYPE', H.ltype, model.lineTypes.length + 2);
  for (const [name, own] of [
    ['ByBlock', H.byBlock],
    ['ByLayer', H.byLayer],
  ] as const) {
    record('LTYPE', own, H.ltype, 'AcDbLinetypeTableRecord', name);
    tags.add(70, 0).add(3, '').add(72, 65).add(73, 0).add(40, '0.0');
  }
  for (const type of model.lineTypes) {
    record('LTYPE', handle(), H.ltype, 'AcDbLinetypeTableRecord', type.name);
    tags.add(70, 0).add(3, type.dash.length === 0 ? 'Solid' : 'Dashes');
    dashTags(tags, type);
    for (const part of dashParts(type)) tags.add(49, dxfNumber(part)).add(74, 0);
  }
  end();
  table('LAYER', H.layer, model.layers.length);
  for (const { name, colour, lineType } of model.layers) {
    record('LAYER', handle(), H.layer, 'AcDbLayerTableRecord', name);
    tags.add(70, 0).add(62, colour).add(6, lineType);
  }
  end();
  table('STYLE', H.style, 1);
  record('STYLE', H.standard, H.style, 'AcDbTextStyleTableRecord', 'Standard');
  tags.add(70, 0).add(40, '0.0').add(41, '1.0').add(50, '0.0').add(71, 0).add(42, '2.5').add(3, 'txt').add(4, '');
  end();
  table('VIEW', H.view, 0);
  end();
  table('UCS', H.ucs, 0);
  end();
  table('APPID', H.appid, 1);
  record('APPID', H.acad, H.appid, 'AcDbRegAppTableRecord', 'ACAD');
  tags.add(70, 0);
  end();
  table('DIMSTYLE', H.dimstyle, 0);
  tags.add(100, 'AcDbDimStyleTable');
  end();
  table('BLOCK_RECORD', H.blockRecord, 2);
  record('BLOCK_RECORD', H.model, H.blockRecord, 'AcDbBlockTableRecord', '*Model_Space');
  record('BLOCK_RECORD', H.paper, H.blockRecord, 'AcDbBlockTableRecord', '*Paper_Space');
  end();
  tags.add(0, 'ENDSEC');
}

function blocks(tags: Tags): void {
  tags.add(0, 'SECTION').add(2, 'BLOCKS');
  for (const [name, owner, begin, end, paper] of [
    ['*Model_Space', H.model, H.modelBegin, H.modelEnd, false],
    ['*Paper_Space', H.paper, H.paperBegin, H.paperEnd, true],
  ] as const) {
    const entity = (kind: string, own: string): void => {
      tags.add(0, kind).add(5, own).add(330, owner).add(100, 'AcDbEntity');
      if (paper) tags.add(67, 1);
      tags.add(8, '0');
    };
    entity('BLOCK', begin);
    tags.add(100, 'AcDbBlockBegin').add(2, name).add(70, 0).point(10, { x: 0, y: 0 }).add(3, name).add(1, '');
    entity('ENDBLK', end);
    tags.add(100, 'AcDbBlockEnd');
  }
  tags.add(0, 'ENDSEC');
}

function entityTags(tags: Tags, entity: DxfEntity, own: string): void {
  const begin = (name: string, subclass: string): void => {
    tags.add(0, name).add(5, own).add(330, H.model).add(100, 'AcDbEntity').add(8, entity.layer);
    if (entity.lineType !== undefined) tags.add(6, entity.lineType);
    if (entity.colour !== undefined) tags.add(62, entity.colour);
    tags.add(100, subclass);
  };
  switch (entity.kind) {
    case 'line':
      begin('LINE', 'AcDbLine');
      tags.point(10, entity.from).point(11, entity.to);
      break;
    case 'polyline':
      begin('LWPOLYLINE', 'AcDbPolyline');
      tags.add(90, entity.vertices.length).add(70, entity.closed ? 1 : 0);
      for (const vertex of entity.vertices) {
        tags.point(10, vertex, true);
        if (vertex.bulge !== 0) tags.add(42, dxfNumber(vertex.bulge));
      }
      break;
    default: {
      const never: never = entity;
      throw new TypeError(`unknown entity ${JSON.stringify(never)}`);
    }
  }
}

function objects(tags: Tags): void {
  tags.add(0, 'SECTION').add(2, 'OBJECTS');
  tags.add(0, 'DICTIONARY').add(5, H.root).add(330, 0).add(100, 'AcDbDictionary').add(281, 1);
  tags.add(3, 'ACAD_GROUP').add(350, H.groups);
  tags.add(0, 'DICTIONARY').add(5, H.groups).add(330, H.root).add(100, 'AcDbDictionary').add(281, 1);
  tags.add(0, 'ENDSEC');
}

import { type DxfEntity, type DxfModel, dashParts, dashTags, dxfNumber, headerTags, Tags } from './model.ts';

/** AC1009: POLYLINE with its vertices, no handles; read by nearly everything (Autodesk DXF reference, R12). */
export function r12(model: DxfModel): string {
  const tags = new Tags();
  headerTags(tags, model, 'AC1009');
  tags.add(0, 'SECTION').add(2, 'TABLES');
  tags.add(0, 'TABLE').add(2, 'LTYPE').add(70, model.lineTypes.length);
  for (const type of model.lineTypes) {
    tags
      .add(0, 'LTYPE')
      .add(2, type.name)
      .add(70, 0)
      .add(3, type.dash.length === 0 ? 'Solid' : 'Dashes');
    dashTags(tags, type);
    for (const part of dashParts(type)) tags.add(49, dxfNumber(part));
  }
  tags.add(0, 'ENDTAB');
  tags.add(0, 'TABLE').add(2, 'LAYER').add(70, model.layers.length);
  for (const { name, colour, lineType } of model.layers)
    tags.add(0, 'LAYER').add(2, name).add(70, 0).add(62, colour).add(6, lineType);
  tags.add(0, 'ENDTAB').add(0, 'ENDSEC');
  tags.add(0, 'SECTION').add(2, 'BLOCKS').add(0, 'ENDSEC');
  tags.add(0, 'SECTION').add(2, 'ENTITIES');
  for (const entity of model.entities) entityTags(tags, entity);
  tags.add(0, 'ENDSEC').add(0, 'EOF');
  return tags.toString();
}

function entityTags(tags: Tags, entity: DxfEntity): void {
  const own = (name: string): void => {
    tags.add(0, name).add(8, entity.layer);
    if (entity.lineType !== undefined) tags.add(6, entity.lineType);
    if (entity.colour !== undefined) tags.add(62, entity.colour);
  };
  switch (entity.kind) {
    case 'line':
      own('LINE');
      tags.point(10, entity.from).point(11, entity.to);
      break;
    case 'polyline':
      own('POLYLINE');
      tags
        .add(66, 1)
        .point(10, { x: 0, y: 0 })
        .add(70, entity.closed ? 1 : 0);
      for (const vertex of entity.vertices) {
        tags.add(0, 'VERTEX').add(8, entity.layer).point(10, vertex);
        if (vertex.bulge !== 0) tags.add(42, dxfNumber(vertex.bulge));
      }
      tags.add(0, 'SEQEND').add(8, entity.layer);
      break;
    default: {
      const never: never = entity;
      throw new TypeError(`unknown entity ${JSON.stringify(never)}`);
    }
  }
}

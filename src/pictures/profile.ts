/**
 * Whether a colour profile (ICC.1, or the name that a PNG gives it) says of itself that it is sRGB: its description is
 * text in one or two bytes a character. Only its beginning is looked at, where descriptions stand.
 */
export function saysSrgb(profile: Uint8Array): boolean {
  const text = Array.from(profile.subarray(0, 4096), (byte) => (byte === 0 ? '' : String.fromCharCode(byte))).join('');
  return /srgb/i.test(text);
}

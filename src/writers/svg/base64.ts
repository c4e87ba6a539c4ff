const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** RFC 4648, section 4. */
export function base64(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let i = 0; i < bytes.length; i += 3) {
    const left = bytes.length - i;
    const bits = (bytes[i]! << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    parts.push(
      DIGITS[bits >> 18]! +
        DIGITS[(bits >> 12) & 63]! +
        (left > 1 ? DIGITS[(bits >> 6) & 63]! : '=') +
        (left > 2 ? DIGITS[bits & 63]! : '='),
    );
  }
  return parts.join('');
}

import os from 'node:os';
import { COLON, CONTENT_LINE_LENGTH_FOLDED, EQUAL, SEMICOLON, SPACE, } from './constants.js';
const homeDir = os.homedir();
export function untildify(path) {
    return homeDir ? path.replace(/^~(?=$|\/|\\)/, homeDir) : path;
}
/**
 * Fold a content line at {@link CONTENT_LINE_LENGTH_FOLDED} octets and push
 * each segment into `lines`, per RFC 5545 §3.1 line-folding rules.
 * https://datatracker.ietf.org/doc/html/rfc5545#section-3.1
 */
export function maybeFoldLine(lines, fullLine) {
    do {
        lines.push(fullLine.substring(0, CONTENT_LINE_LENGTH_FOLDED));
        fullLine = SPACE + fullLine.substring(CONTENT_LINE_LENGTH_FOLDED);
    } while (fullLine.length > 1);
}
export function reconstructParam(key, param) {
    const paramParts = Object.keys(param)
        .filter((k) => k !== '_')
        .map((k) => k + EQUAL + param[k]);
    const prefix = paramParts.length > 0 ? key + SEMICOLON + paramParts.join(SEMICOLON) : key;
    return prefix + COLON + param._;
}

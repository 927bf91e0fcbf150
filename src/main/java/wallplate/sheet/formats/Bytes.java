package wallplate.sheet.formats;

/** Numbers at places in a file's bytes; a place outside them reads as 0. */
record Bytes(byte[] content, boolean bigEndian) {

    int length() {
        return content.length;
    }

    int unsigned8(long at) {
        return at >= 0 && at < content.length ? content[(int) at] & 0xff : 0;
    }

    int unsigned16(long at) {
        return bigEndian
                ? unsigned8(at) << 8 | unsigned8(at + 1)
                : unsigned8(at + 1) << 8 | unsigned8(at);
    }

    long unsigned32(long at) {
        return bigEndian
                ? (long) unsigned16(at) << 16 | unsigned16(at + 2)
                : (long) unsigned16(at + 2) << 16 | unsigned16(at);
    }

    int unsigned24(long at) {
        return bigEndian
                ? unsigned8(at) << 16 | unsigned16(at + 1)
                : unsigned8(at + 2) << 16 | unsigned16(at);
    }

    boolean hasAt(long at, String text) {
        for (int i = 0; i < text.length(); i++) {
            if (unsigned8(at + i) != text.charAt(i)) {
                return false;
            }
        }
        return true;
    }
}

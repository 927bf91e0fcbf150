package wallplate.accounts;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;
import java.util.HexFormat;

/** Where a request comes from, as it is counted. */
public final class Network {

    /** One household or school has all of such a network (RFC 6177): 64 bits at the least. */
    private static final int IPV6_BYTES = 8;

    private Network() {}

    /** An IPv4 address as it is, of an IPv6 address its first 64 bits; any other text as it is. */
    public static String of(String address) {
        // Only figures are parsed: a name would be looked up.
        if (!address.contains(":") || !address.matches("[0-9a-fA-F:.]{2,45}")) {
            return address;
        }
        try {
            byte[] bytes = InetAddress.getByName(address).getAddress();
            return bytes.length <= Integer.BYTES
                    ? address
                    : HexFormat.of().formatHex(Arrays.copyOf(bytes, IPV6_BYTES)) + "/64";
        } catch (UnknownHostException malformed) {
            return address;
        }
    }
}

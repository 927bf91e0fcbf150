package wallplate.web.sheet;

import java.io.IOException;
import java.time.Duration;
import org.springframework.core.io.InputStreamResource;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.context.request.WebRequest;
import wallplate.records.ScanStore;
import wallplate.web.page.NotFound;

/** Page pictures by their names, which stand for their content: what an address shows never changes. */
@Controller
class PictureController {

    private static final CacheControl FOR_GOOD =
            CacheControl.maxAge(Duration.ofDays(365)).cachePrivate().immutable();

    private final ScanStore store;
    private final KeptTiles tiles;

    PictureController(ScanStore store, KeptTiles tiles) {
        this.store = store;
        this.tiles = tiles;
    }

    /** Makes a picture where the browser does not have it yet. */
    private interface Making<T> {
        T make() throws IOException;
    }

    @GetMapping("/pictures/{name:[0-9a-f]{64}}.png")
    ResponseEntity<InputStreamResource> picture(@PathVariable String name, WebRequest request) {
        return png(name, request, () -> new InputStreamResource(store.open(name)));
    }

    /** A tile of a page picture, by its column and row from the upper left, both from 0. */
    @GetMapping("/pictures/{name:[0-9a-f]{64}}/tiles/{column:\\d}-{row:\\d}.png")
    ResponseEntity<byte[]> tile(
            @PathVariable String name, @PathVariable int column, @PathVariable int row, WebRequest request) {
        return png(name + "-" + column + "-" + row, request, () -> tiles.of(name)
                .tile(column, row)
                .orElseThrow(() -> new NotFound("The picture has no such tile.")));
    }

    /** A part of a page picture; places are its pixels. */
    @GetMapping("/pictures/{name:[0-9a-f]{64}}/part.png")
    ResponseEntity<byte[]> part(
            @PathVariable String name,
            @RequestParam int left,
            @RequestParam int top,
            @RequestParam int width,
            @RequestParam int height,
            WebRequest request) {
        String place = "%s-%d-%d-%d-%d".formatted(name, left, top, width, height);
        return png(place, request, () -> tiles.of(name).part(left, top, width, height));
    }

    private static <T> ResponseEntity<T> png(String content, WebRequest request, Making<T> making) {
        if (request.checkNotModified('"' + content + '"')) {
            return ResponseEntity.status(304).cacheControl(FOR_GOOD).eTag(content).build();
        }
        try {
            return ResponseEntity.ok()
                    .cacheControl(FOR_GOOD)
                    .eTag(content)
                    .contentType(MediaType.IMAGE_PNG)
                    .body(making.make());
        } catch (IOException gone) {
            throw new NotFound("This picture is no longer kept.");
        }
    }
}

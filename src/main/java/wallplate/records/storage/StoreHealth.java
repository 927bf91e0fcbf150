package wallplate.records.storage;

import org.springframework.boot.health.contributor.AbstractHealthIndicator;
import org.springframework.boot.health.contributor.Health;
import org.springframework.stereotype.Component;

/** Says whether scans can be kept and given at the moment. */
@Component("store")
class StoreHealth extends AbstractHealthIndicator {

    private final ScanShelf shelf;

    StoreHealth(ScanShelf shelf) {
        super("the scan store does not answer");
        this.shelf = shelf;
    }

    @Override
    protected void doHealthCheck(Health.Builder health) throws Exception {
        shelf.check();
        health.up();
    }
}

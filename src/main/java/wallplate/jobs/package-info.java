/**
 * Durable background work: each handler is one call into the modules that know the business.
 *
 * <p>A file that was handed in is one job, which counts its pages or takes out the scans that it holds; each page is
 * then a job of its own. Jobs are rows in the database, so that any number of processes can share them and none is lost with a
 * process: what a page gave and that it was read are kept in one step. Jobs of different classes take turns. What fails is tried
 * again after a wait that grows; a page during which its process died twice is set aside.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"task", "sheet", "assessment", "report", "records", "marking", "privacy", "audit", "handouts"})
package wallplate.jobs;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

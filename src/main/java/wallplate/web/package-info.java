/**
 * Pages and fragments, by screen area. No SQL, no image code, no arithmetic.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"geometry", "task", "solver", "drafting", "sheet", "measure", "marking", "assessment", "report", "records", "audit", "accounts", "ownership", "tables", "marksheets", "classes", "moderation", "remarking", "analysis", "statistics", "jobs", "privacy", "handouts"})
package wallplate.web;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;

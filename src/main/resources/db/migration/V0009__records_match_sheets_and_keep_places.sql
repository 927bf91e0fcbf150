-- What the printed code on a sheet says, and how the sheet came to its learner.
alter table sheets add column printed_code varchar(140);
alter table sheets add column matched_by varchar(10) default 'order' not null;
update sheets set matched_by = 'hand' where learner_set_by_hand;
alter table sheets drop column learner_set_by_hand;

-- How large the level page is, and where on it each criterion was measured, so that one place of two hundred sheets can be
-- shown without opening two hundred assessments. Empty for sheets that were read before.
alter table sheets add column page_width_mm double precision;
alter table sheets add column page_height_mm double precision;
alter table sheets add column page_pixels_per_mm double precision;
alter table marks add column evidence varchar(4000);

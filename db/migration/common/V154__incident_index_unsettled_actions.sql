create index incident_actions_unsettled_ix on incident_actions (checked_by, owner, due_on);

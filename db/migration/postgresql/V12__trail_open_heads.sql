create function trail_open_head() returns trigger language plpgsql as $$
begin
    insert into trail_heads (lab, hash) values (new.id, repeat('0', 64));
    return null;
end
$$;

create trigger labs_open_trail after insert on labs for each row execute function trail_open_head();
